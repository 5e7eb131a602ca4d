import type { Candidate } from '../drawdown/choose-cylinder'
import { holds } from '../drawdown/choose-cylinder'
import { forecastFlow, type NextTest } from '../drawdown/forecast'
import { RUNS_USUAL } from '../drawdown/series-limits'
import type { SeriesState } from '../drawdown/types'
import type { BudgetSource, Estimate } from '../statistics/estimate'
import { estimate, type DoubtLine } from '../statistics/make-estimate'
import type { WindowNumbers } from './read-window'
import type { BasisUnit, SettlingStep } from './types'

/** Where the series stands, and what it could be repeated with. */
export interface Settling {
  readonly state: SeriesState
  /** the instruments at hand, the one in use among them */
  readonly tools: readonly Candidate[]
}

/** Time one run costs beside running: refilling, wiping, reading twice, s; and fetching another cylinder. Judgement. */
const AROUND_A_RUN = 30
const CHANGE_OF_CYLINDER = 60
/** No one runs a pump longer than this for one reading, s; lengths are offered in whole half-minutes. Judgement. */
const LONGEST_RUN = 300
const STEP = 30
const MOST_RUNS = 10

interface Option {
  readonly step: SettlingStep
  /** s of the rep's time */
  readonly cost: number
  readonly test: NextTest
}

/**
 * The cheapest step, in the rep's time, after which the same value would be proved: a few more runs, longer runs, or
 * another cylinder. Each option's budget is forecast and put in place of the flow test's part of the budget; what the
 * test cannot change (seconds per rack, rinse water, density, strength) stays.
 *
 * When nothing would prove the value where it lies, or it lies outside, the step is to turn first, provided the best
 * test could then prove the target: forecast at the flow of the target, which has other doubts than the flow found.
 * Otherwise the window is too narrow for what the test cannot change: `cannot-be-settled`.
 */
export function settlingStep(
  value: Estimate<BasisUnit>,
  window: WindowNumbers,
  settling: Settling,
): SettlingStep {
  const inside = value.value >= window.low && value.value <= window.high
  const margin = inside ? roomAround(value.value, window) : 0
  const { flow } = settling.state
  let cheapest: Option | null = null
  for (const option of inside ? options(settling, flow) : []) {
    const expected = forecastOn(value, settling.state, option.test, value.value)
    if (expected !== null && expected <= margin && (cheapest === null || option.cost < cheapest.cost))
      cheapest = option
  }
  if (cheapest !== null) return cheapest.step
  const room = roomAround(window.target, window)
  const turned = options(settling, (flow * window.target) / value.value).some((option) => {
    const expected = forecastOn(value, settling.state, option.test, window.target)
    return expected !== null && expected <= room
  })
  return turned ? { kind: 'turn-first' } : { kind: 'cannot-be-settled' }
}

const roomAround = (at: number, { low, high }: WindowNumbers): number => Math.min(at - low, high - at)

/** What can be tried at a flow in mL/min: a run must stay on the scale of its instrument. */
function options({ state, tools }: Settling, flow: number): readonly Option[] {
  const { runs, seconds, doubt } = state
  const list: Option[] = []
  for (let more = 1; runs + more <= MOST_RUNS; more += 1)
    list.push({
      step: { kind: 'more-runs', runs: more, seconds },
      cost: more * (seconds + AROUND_A_RUN),
      test: { runs: runs + more, seconds, doubt },
    })
  for (const tool of tools) {
    const isSame = tool.instrumentId === state.instrumentId
    for (let t = STEP; t <= LONGEST_RUN; t += STEP) {
      if (!holds(tool, (flow * t) / 60) || (isSame && t <= seconds)) continue
      list.push({
        step: isSame
          ? { kind: 'longer-runs', runs: RUNS_USUAL, seconds: t }
          : { kind: 'better-cylinder', instrumentId: tool.instrumentId, seconds: t },
        cost: RUNS_USUAL * (t + AROUND_A_RUN) + (isSame ? 0 : CHANGE_OF_CYLINDER),
        test: { runs: RUNS_USUAL, seconds: t, doubt: tool.doubt },
      })
    }
  }
  return list
}

/** What a flow test decides; everything else in a budget it cannot change. */
const OF_THE_TEST: ReadonlySet<BudgetSource> = new Set([
  'replicates',
  'run-repeatability',
  'reading',
  'roller-pulse',
  'timer',
  'cylinder-tolerance',
  'scale',
  'tube-factor',
])

/**
 * Expanded uncertainty to expect on the basis after another test that finds the value `at`; null when it cannot be
 * forecast. What the test cannot change is taken to go with the value.
 */
function forecastOn(
  value: Estimate<BasisUnit>,
  state: SeriesState,
  test: NextTest,
  at: number,
): number | null {
  if (!(state.flow > 0)) return null
  const perFlow = value.value / state.flow
  const flow = forecastFlow(state, { ...test, flow: at / perFlow })
  if (!flow.ok) return null
  const fromTest: readonly DoubtLine[] = flow.value.budget
    .filter((line) => OF_THE_TEST.has(line.source))
    .map((line) => ({ ...line, standard: line.standard * perFlow }))
  const kept = value.budget
    .filter((line) => !OF_THE_TEST.has(line.source))
    .map((line) => ({ ...line, standard: (line.standard * at) / value.value }))
  const expected = estimate(at, value.unit, [...fromTest, ...kept])
  return expected.ok ? expected.value.expanded : null
}
