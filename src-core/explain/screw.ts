import { BACK_OFF, PASSING_RISK, PASSING_RISK_CAREFUL } from '../screw/limits'
import type { TurnAdvice } from '../screw/types'
import type { Estimate } from '../statistics/estimate'
import { formatPlaces } from '../units/format'
import type { DecimalSign } from '../units/parse'
import type { Working } from './types'
import { line, put } from './working'

/** What an advice was given about: the flows of the window and the last test, mL/min. */
export interface AdviceGround {
  readonly low: number
  readonly target: number
  readonly high: number
  readonly flow: Estimate<'mL/min'>
  readonly careful?: boolean
}

const LEARNT = {
  'this-visit': 'The gain is learnt from the turns of this visit, weighed against what was known before.',
  'earlier-visits': 'The gain is known from earlier visits to this pump.',
  'same-kind': 'The gain is taken from other pumps of the same kind until this one has shown its own.',
  'nothing-yet':
    'Nothing is known of this screw: one turn may do between 12 % and 95 % of the target, every factor alike. This move is a test.',
} as const

const SOURCE =
  'Bayesian linear regression of flow on turns with level and gain unknown, one test at a time (Gelman and others, Bayesian Data Analysis, ch. 14; from memory). The weighing of steps is this program’s own and was played on 10 000 virtual pumps.'

/** The working of an advice on the screw; null for a refusal, which has no numbers. Never fails. */
export function explainTurn(
  advice: TurnAdvice,
  ground: AdviceGround,
  sign: DecimalSign = 'point',
): Working | null {
  switch (advice.kind) {
    case 'refuse':
      return null
    case 'leave':
      return leave(advice, ground, sign)
    case 'diagnose':
    case 'confirm':
      return notTheScrew(advice, ground, sign)
    case 'turn':
      return turn(advice, ground, sign)
  }
}

type Kind<K extends TurnAdvice['kind']> = Extract<TurnAdvice, { readonly kind: K }>

function turn(advice: Kind<'turn'>, ground: AdviceGround, sign: DecimalSign): Working {
  const { target, flow } = ground
  const gain = advice.gain ?? null
  const wanted = gain !== null && gain.value > 0 ? (target - flow.value) / gain.value : null
  return {
    title: 'Next turn of the screw',
    formula: gain === null ? 'move = step that most likely settles it' : 'turns wanted = (q* − q) / g',
    inputs: [
      line('q*', 'Flow the target needs', target, 'mL/min'),
      line('q', 'Flow of the last test', flow.value, 'mL/min'),
      ...(gain === null
        ? []
        : [
            line('g', 'Gain of the screw', gain.value, 'mL/min per turn'),
            line('U(g)', 'Its uncertainty, 95 %', gain.expanded, 'mL/min per turn'),
          ]),
      ...(advice.expectedFlow === null
        ? []
        : [line('q after', 'Flow expected after the move', advice.expectedFlow.value, 'mL/min')]),
    ],
    substituted:
      gain === null || wanted === null
        ? `from ${put(flow.value, sign)} towards ${put(target, sign)} mL/min`
        : `(${put(target, sign)} − ${put(flow.value, sign)}) / ${put(gain.value, sign)} = ${put(wanted, sign)} turns`,
    result: line('n', 'Move, in eighths of a turn', advice.eighths, 'eighths'),
    source: SOURCE,
    assumptions: [
      LEARNT[advice.learnedFrom],
      ...capping(ground, advice.remainingEighths, sign),
      ...(advice.chance === undefined
        ? []
        : [
            `Of all whole eighths, this move most likely settles it: chance to land in the window ${percent(advice.chance, sign)}.`,
          ]),
      `Every move ends clockwise. Going down, back off ${BACK_OFF} eighths further and come up: the screw may have up to a quarter turn of play.`,
      'The gain may change by about 5 % over a turn; the interval allows for it.',
    ],
  }
}

function capping(ground: AdviceGround, remaining: number, sign: DecimalSign): readonly string[] {
  const risk = ground.careful === true ? PASSING_RISK_CAREFUL : PASSING_RISK
  const why = `The step grows only as far as the chance of passing the other edge of the window stays below ${percent(risk, sign)}.`
  return remaining === 0 ? [why] : [why, `About ${Math.abs(remaining)} more eighths will be wanted after it.`]
}

function leave(advice: Kind<'leave'>, { low, high, target, flow }: AdviceGround, sign: DecimalSign): Working {
  const proved = advice.reason === 'proved-in'
  const off = Math.abs(flow.value - target)
  const more =
    advice.moreRuns === undefined
      ? []
      : [
          `${advice.moreRuns} more ${advice.moreRuns === 1 ? 'run' : 'runs'} like these would prove it. A move costs the turn, half a minute of running in and three runs.`,
        ]
  return {
    title: 'Leave the screw where it is',
    formula: proved ? 'low ≤ q − U and q + U ≤ high' : '|q − q*| against what a turn would gain',
    inputs: [
      line('q', 'Flow of the last test', flow.value, 'mL/min'),
      line('U', 'Its uncertainty, 95 %', flow.expanded, 'mL/min'),
      line('low', 'Lowest flow of the window', low, 'mL/min'),
      line('high', 'Highest flow of the window', high, 'mL/min'),
    ],
    substituted: proved
      ? `${put(low, sign)} ≤ ${put(flow.low, sign)} and ${put(flow.high, sign)} ≤ ${put(high, sign)}`
      : `|${put(flow.value, sign)} − ${put(target, sign)}| = ${put(off, sign)} mL/min`,
    result: line('|q − q*|', 'Distance from the target', off, 'mL/min'),
    source: 'Guard band: the whole 95 % interval lies inside the window (JCGM 106:2012, from memory).',
    assumptions: [
      ...(advice.reason === 'within-half-a-step'
        ? ['It is off by less than half an eighth of a turn would change.']
        : []),
      ...more,
    ],
  }
}

function notTheScrew(
  advice: Kind<'diagnose'> | Kind<'confirm'>,
  { target, flow }: AdviceGround,
  sign: DecimalSign,
): Working {
  const chance = advice.probability
  return {
    title: advice.kind === 'confirm' ? 'The screw may not be the trouble' : 'Not the screw',
    formula: 'P = weight of “it does not act” / weight of all explanations',
    inputs: [
      line('q*', 'Flow the target needs', target, 'mL/min'),
      line('q', 'Flow of the last test', flow.value, 'mL/min'),
    ],
    substituted:
      chance === null
        ? 'judged by a rule, not by odds'
        : `P = ${percent(chance, sign)} after the tests so far`,
    result:
      chance === null
        ? line('q', 'Flow of the last test', flow.value, 'mL/min')
        : line('P', 'Belief in this finding', 100 * chance, '%'),
    source:
      'Bayes’ rule over rival lines; a screw is called dead only at odds that a sound one reaches less than once in a thousand (Ville’s inequality).',
    assumptions: [
      'Before anything was seen, one screw in twenty is taken not to act.',
      'Each move upward may meet the end of what a worn tube can give, one in fifty.',
    ],
  }
}

const percent = (share: number, sign: DecimalSign): string =>
  share > 0.999
    ? `more than ${formatPlaces(99.9, 1, sign)} %`
    : `${formatPlaces(100 * share, share > 0.99 ? 1 : 0, sign)} %`
