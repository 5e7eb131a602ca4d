import { grubbs } from '../statistics/grubbs'
import { seriesSpread } from './observed-flow'
import {
  AGREEMENT,
  CV_STOPS,
  CV_WARNS,
  GRADUATIONS_NEEDED,
  PULSES_NEEDED,
  RUNS_NEEDED,
  RUNS_USUAL,
} from './series-limits'
import { trendFinding } from './trend'
import { twoLevels } from './two-levels'
import type { GoodRun, GradedFinding, SeriesQuality } from './types'

/** What the quality of a series is judged by. */
export interface SeriesFacts {
  /** runs that count, in the order made */
  readonly runs: readonly GoodRun[]
  readonly primed: boolean
  /** fewest marks that passed in one run; null when the graduation is unknown */
  readonly graduations: number | null
  readonly pulsesPerMinute: number | null
  /** days past the day the tube was due; 0 or less, or null when unknown, is no finding */
  readonly tubeOverdueDays: number | null
}

/**
 * What a series says about itself: whether it may be trusted, and if not, why. Limits in `series-limits.ts`.
 * A finding that stops refuses a turn.
 */
export function seriesQuality(facts: SeriesFacts): SeriesQuality {
  const { runs } = facts
  const spread = seriesSpread(runs)
  const mean = spread?.mean ?? null
  const standardDeviation = spread?.standardDeviation ?? null
  const hasFlow = mean !== null && mean > 0
  const ratio = hasFlow && standardDeviation !== null ? standardDeviation / mean : null
  const cv = ratio !== null && Number.isFinite(ratio) ? ratio : null
  const flows = runs.map((run) => run.flow)
  const mayBreak = !agree(flows)
  const findings: (GradedFinding | null)[] = [
    facts.primed ? null : { code: 'not-primed', severity: 'stops' },
    mean === 0 ? { code: 'no-flow', severity: 'stops' } : null,
    tooFew(runs.length),
    hasFlow ? trendFinding(flows) : null,
    mayBreak ? outlier(runs, facts.graduations) : null,
    scatter(cv),
    mayBreak ? levels(flows) : null,
    fewGraduations(facts.graduations),
    fewPulses(facts),
    (facts.tubeOverdueDays ?? 0) > 0
      ? { code: 'tube-overdue', days: facts.tubeOverdueDays ?? 0, severity: 'warns' }
      : null,
  ]
  return { findings: findings.filter((f) => f !== null), mean, standardDeviation, cv }
}

/** Whether runs agree so well that neither an outlier nor two levels in them would matter, whatever the tests say. */
function agree(flows: readonly number[]): boolean {
  const low = Math.min(...flows)
  return low > 0 && Math.max(...flows) - low <= AGREEMENT * low * (1 - 1e-9)
}

const tooFew = (have: number): GradedFinding | null =>
  have < RUNS_NEEDED
    ? { code: 'too-few-runs', have, need: RUNS_NEEDED, severity: 'stops' }
    : have < RUNS_USUAL
      ? { code: 'too-few-runs', have, need: RUNS_USUAL, severity: 'warns' }
      : null

/**
 * Grubbs' test alone would cry wolf over three runs of which two happen to read the same: the suspect must also lie 2 %
 * and more than one mark of the scale from the rest.
 */
function outlier(runs: readonly GoodRun[], graduations: number | null): GradedFinding | null {
  const flows = runs.map((run) => run.flow)
  const test = grubbs(flows)
  if (!test.ok || !test.value.isOutlier) return null
  const suspect = runs[test.value.index]
  if (suspect === undefined) return null
  const others = flows.filter((_, i) => i !== test.value.index)
  const rest = others.reduce((a, b) => a + b, 0) / others.length
  const mark = graduations === null || graduations < 1 ? 0 : 1 / graduations
  if (Math.abs(suspect.flow - rest) <= Math.max(AGREEMENT, mark) * rest) return null
  const { statistic, critical } = test.value
  return { code: 'outlier', runId: suspect.runId, statistic, critical, severity: 'stops' }
}

function scatter(cv: number | null): GradedFinding | null {
  if (cv === null || cv <= CV_WARNS) return null
  return cv > CV_STOPS
    ? { code: 'scatter', cv, limit: CV_STOPS, severity: 'stops' }
    : { code: 'scatter', cv, limit: CV_WARNS, severity: 'warns' }
}

function levels(flows: readonly number[]): GradedFinding | null {
  const found = twoLevels(flows)
  return found === null ? null : { code: 'two-levels', ...found, severity: 'warns' }
}

const fewGraduations = (graduations: number | null): GradedFinding | null =>
  graduations !== null && graduations < GRADUATIONS_NEEDED
    ? { code: 'few-graduations', graduations, need: GRADUATIONS_NEEDED, severity: 'warns' }
    : null

function fewPulses({ runs, pulsesPerMinute }: SeriesFacts): GradedFinding | null {
  if (pulsesPerMinute === null || runs.length === 0) return null
  const pulses = (Math.min(...runs.map((run) => run.seconds)) * pulsesPerMinute) / 60
  return pulses < PULSES_NEEDED
    ? { code: 'few-pulses', pulses: Math.floor(pulses), need: PULSES_NEEDED, severity: 'warns' }
    : null
}
