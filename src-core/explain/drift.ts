import type { Change, Decay, Leaving } from '../drift/types'
import { HORIZON_DAYS } from '../drift/limits'
import type { Estimate } from '../statistics/estimate'
import type { DecimalSign } from '../units/parse'
import type { Working, WorkingLine } from './types'
import { line, put } from './working'

/** The working of how fast a tube's flow falls. The rate is shown in percent of the flow per 30 days. Never fails. */
export function explainDecay(decay: Decay, sign: DecimalSign = 'point'): Working {
  const { percent, expanded } = decay.in30Days
  return {
    title: 'How fast the flow of this tube falls',
    formula: 'ln q = a − λ × age',
    inputs: [
      line('n', 'Tests in the fit', decay.tests, ''),
      line('T', 'Days from the first to the last', decay.days, 'days'),
      line('λ', 'Rate', decay.rate, 'per day'),
      line('U(λ)', 'Its uncertainty, 95 %', decay.expanded, 'per day'),
      line('ν', 'Degrees of freedom', decay.degreesOfFreedom, ''),
    ],
    substituted: `100 × (1 − e^(−30 × ${put(decay.rate, sign)})) = ${put(percent, sign)} ± ${put(expanded, sign)}`,
    result: line('1 − e^(−30 λ)', 'Fall in 30 days', percent, '%'),
    source:
      'Weighted least squares with one rate and a level of its own after every adjustment (analysis of covariance; Snedecor and Cochran, from memory). Exponential fall: an assumption, no published curve for this duty was found.',
    assumptions: [
      'Only what one visit left against what the next one found counts; a turn is never taken for wear.',
      'Nobody turned the screw between visits, and the tests were made alike.',
      decay.includesSettling
        ? 'The first week of the tube is among the tests for want of others; a new tube changes most then.'
        : 'The first week of a new tube is left out.',
      ...(decay.direction === 'rising'
        ? [
            'A rising flow is not wear: think of siphoning, higher voltage, a screw somebody turned, a container raised, a wrong tube.',
          ]
        : []),
    ],
  }
}

/** The working of the day the flow leaves its window. `flow`: the last test; `edge`: that edge in mL/min. Never fails. */
export function explainLeaving(
  leaving: Leaving,
  flow: Estimate<'mL/min'>,
  edge: number,
  decay: Pick<Decay, 'rate' | 'expanded'>,
  sign: DecimalSign = 'point',
): Working {
  const show = (days: number | null): string => (days === null ? 'not within ten years' : put(days, sign))
  return {
    title: 'When the flow leaves its window',
    formula: 'days = ln(q / edge) / λ',
    inputs: [
      line('q', 'Flow of the last test', flow.value, 'mL/min'),
      line('U(q)', 'Its uncertainty, 95 %', flow.expanded, 'mL/min'),
      line(
        'edge',
        leaving.edge === 'low' ? 'Lowest flow of the window' : 'Highest flow of the window',
        edge,
        'mL/min',
      ),
      line('λ', 'Rate at which the flow falls', decay.rate, 'per day'),
      line('U(λ)', 'Its uncertainty, 95 %', decay.expanded, 'per day'),
    ],
    substituted: `ln(${put(flow.value, sign)} / ${put(edge, sign)}) / ${put(decay.rate, sign)} = ${show(leaving.days)}`,
    result: foretold(leaving),
    source: 'Fieller’s theorem for the interval of a ratio (E. C. Fieller, 1940; from memory).',
    assumptions: [
      `Between ${show(leaving.earliest)} and ${show(leaving.latest)} days with 95 % confidence.`,
      'The flow goes on as it went: same tube, same product, same container place.',
      ...(leaving.rateFrom === 'an-earlier-tube'
        ? ['This tube has no rate of its own yet; the one before lends its rate, with doubled uncertainty.']
        : []),
    ],
  }
}

function foretold({ days, earliest }: Leaving): WorkingLine {
  if (days !== null) return line('days', 'Days from the last test', days, 'days')
  return earliest === null
    ? line('days', 'It stays in the window for at least', HORIZON_DAYS, 'days')
    : line('days', 'It may leave the window from the last test on in', earliest, 'days')
}

/** The working of one change from left to found. Never fails. */
export function explainChange(change: Change, sign: DecimalSign = 'point'): Working {
  const { from, to, score } = change
  return {
    title: 'From left to found',
    formula: 'E_n = |q1 − q2| / √(U1² + U2²)',
    inputs: [
      line('q1', 'Flow left at the visit before', from.flow.value, 'mL/min'),
      line('U1', 'Its uncertainty, 95 %', from.flow.expanded, 'mL/min'),
      line('q2', 'Flow found', to.flow.value, 'mL/min'),
      line('U2', 'Its uncertainty, 95 %', to.flow.expanded, 'mL/min'),
    ],
    substituted: `|${put(from.flow.value, sign)} − ${put(to.flow.value, sign)}| / √(${put(from.flow.expanded, sign)}² + ${put(to.flow.expanded, sign)}²) = ${score === null ? '—' : put(score, sign)}`,
    result: line('Δ', 'Change', 100 * change.relative, '%'),
    source: 'E_n score of ISO 13528 (from memory): above 1 the two differ by more than both uncertainties.',
    assumptions: [
      'With one cylinder both times its tolerance cancels, so the score is on the safe side.',
      ...(change.across === 'nothing' ? [] : [`Between them: ${ACROSS[change.across]}.`]),
    ],
  }
}

const ACROSS = {
  turn: 'the screw was turned',
  tube: 'a new tube was fitted',
  product: 'the product was changed',
} as const
