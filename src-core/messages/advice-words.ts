import type { NotTheScrew, TurnAdvice, TurnRefusal } from '../screw/types'
import { formatEstimate } from '../units/format'
import type { DecimalSign } from '../units/parse'
import { moveSentence } from './turn-words'

type Kind<K extends TurnAdvice['kind']> = Extract<TurnAdvice, { readonly kind: K }>

/** Why no turn is advised yet, and what to do about it. */
export const REFUSALS: Record<TurnRefusal, string> = {
  'not-tested': 'Time this pump first.',
  'not-primed': 'Prime the line and mark it as primed.',
  'too-few-runs': 'Time at least two runs that count.',
  'series-trends': 'The runs still rise or fall. Prime on and time again.',
  'series-scatters': 'The runs scatter too much. Find the bubble or the loose fitting first.',
  'series-has-outlier': 'One run does not fit the others. Mend it, or leave it out with a reason.',
  'conditions-not-answered': 'Answer the site conditions that bear on the dose.',
  'condition-not-ok': 'A site condition that bears on the dose is not as it should be. Put it right first.',
  'no-window': 'This pump has no target window. Enter it in the set-up, from the label.',
  'not-set-by-screw':
    'This pump is not set by a screw. Change its setting on its own control, then time it again.',
  'held-by-probe':
    'A probe holds this strength; the screw only sets how fast it is reached. Titrate the wash water, then set the controller.',
  'inputs-missing': 'Something the dose is worked out from is missing; it is named above.',
  'caution-not-acknowledged': 'Read the cautions for this product first.',
}

/** What it is when it is not the screw: a heading, and what to look at. */
export const NOT_THE_SCREW: Record<NotTheScrew, readonly [heading: string, look: string]> = {
  'screw-does-not-act': [
    'The screw does not act',
    'Is it this pump’s screw? Is it at its end stop, the tube worn, the line blocked? Do not keep turning.',
  ],
  'wrong-way': [
    'The flow went the wrong way',
    'Wrong screw, wrong pump, or a turn written down the wrong way round? Compare with the witness mark.',
  ],
  'worn-tube-or-leak': [
    'Worn tube, leak or blockage',
    'The flow fell while the screw stood still. Mend that first: turning up a worn tube overdoses when it is replaced.',
  ],
  'out-of-range': [
    'Out of the screw’s range',
    'The window lies beyond the end stop. Wrong tube size, wrong strength of product, or a worn tube?',
  ],
  'no-flow': [
    'Nothing flows',
    'Empty container, unprimed line, split tube, motor not turning. Safety first, then look.',
  ],
  'too-many-moves': [
    'Four moves have not brought it in',
    'Stop turning. Look at tube, strainer, container and line before the screw is touched again.',
  ],
}

/** Where the belief in what a turn does comes from. */
export function learnedWords(advice: Kind<'turn'>, sign: DecimalSign): string {
  const gain = advice.gain === null ? '' : `: one turn does ${formatEstimate(advice.gain, sign).whole}`
  switch (advice.learnedFrom) {
    case 'this-visit':
      return `Learned from this visit’s turns${gain}.`
    case 'earlier-visits':
      return `Learned at earlier visits${gain}.`
    case 'same-kind':
      return `Taken from other pumps of this kind${gain}.`
    case 'nothing-yet':
      return 'Nothing is known of this screw yet.'
    default:
      return unhandled(advice.learnedFrom)
  }
}

/** What to expect after a turn. */
export function expectWords(advice: Kind<'turn'>, sign: DecimalSign): string {
  if (advice.expectedFlow === null || advice.isTestMove)
    return 'This is a test move: it shows what the screw does. The next advice will be sharper.'
  const more =
    advice.remainingEighths === 0 ? '' : ' That is as far as one move should go; more may be wanted after it.'
  return `Expect ${formatEstimate(advice.expectedFlow, sign).whole} after it.${more}`
}

export const LEAVE: Record<Kind<'leave'>['reason'], string> = {
  'proved-in': 'Leave the screw. Lock it, and leave the witness mark where it is.',
  'within-half-a-step': 'Leave the screw: an eighth of a turn would not bring it closer.',
  'not-worth-a-move': 'Leave the screw: what is left is smaller than a turn can mend.',
}

/** A whole advice in plain sentences, as it stands where there is no dial beside it. */
export function adviceSentences(advice: TurnAdvice, sign: DecimalSign): readonly string[] {
  switch (advice.kind) {
    case 'turn':
      return [
        moveSentence(advice.eighths, advice.backOffEighths),
        expectWords(advice, sign),
        learnedWords(advice, sign),
      ]
    case 'leave':
      return [LEAVE[advice.reason], ...moreRunsSentence(advice)]
    case 'diagnose':
      return [`${NOT_THE_SCREW[advice.finding][0]}. ${NOT_THE_SCREW[advice.finding][1]}`]
    case 'confirm':
      return [
        `${NOT_THE_SCREW[advice.finding][0]}? ${NOT_THE_SCREW[advice.finding][1]}`,
        advice.eighths === undefined
          ? CONFIRM_BY_TEST
          : `${moveSentence(advice.eighths, advice.backOffEighths ?? 0)} That would tell.`,
      ]
    case 'refuse':
      return advice.reasons.map((reason) => REFUSALS[reason])
    default:
      return unhandled(advice)
  }
}

export const CONFIRM_BY_TEST = 'Time it once more before you act on it.'

/** Runs that would prove the dose without a turn; none where nothing is known of them. */
export const moreRunsSentence = ({ moreRuns }: Kind<'leave'>): readonly string[] =>
  moreRuns === undefined
    ? []
    : [`${moreRuns === 1 ? 'One more run' : `${moreRuns} more runs`} would prove it without a turn.`]

const unhandled = (value: never): never => {
  throw new Error(`no words for ${JSON.stringify(value)}`)
}
