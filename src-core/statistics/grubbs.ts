import { fail, ok, type Outcome } from '../outcome'
import { tQuantile } from './distributions'
import { meanAndSpread } from './mean-and-spread'

export interface GrubbsResult {
  /** place of the value farthest from the mean */
  readonly index: number
  readonly statistic: number
  readonly critical: number
  readonly isOutlier: boolean
}

const USUAL = 0.05

/**
 * Critical value of Grubbs' statistic for one outlier, two-sided at `alpha`.
 * Source: NIST/SEMATECH e-Handbook 1.3.5.17.1. Needs n of at least 3.
 */
export function grubbsCritical(n: number, alpha = USUAL, sides: 1 | 2 = 2): number {
  const count = Math.max(3, n)
  const t = tQuantile(1 - alpha / (sides * count), count - 2)
  return ((count - 1) / Math.sqrt(count)) * Math.sqrt((t * t) / (count - 2 + t * t))
}

/** Series have a handful of lengths, and a t quantile costs more than the rest of the test. */
const known = new Map<number, number>()
function usualCritical(n: number): number {
  const before = known.get(n)
  if (before !== undefined) return before
  const critical = grubbsCritical(n)
  known.set(n, critical)
  return critical
}

/**
 * Grubbs' test: is the value farthest from the mean too far to belong?
 *
 * Problems: `too-few-runs` below three values, `no-scatter` when all are equal, `outside-valid-range`.
 */
export function grubbs(values: readonly number[], alpha = USUAL): Outcome<GrubbsResult> {
  if (values.length < 3) return fail({ code: 'too-few-runs', have: values.length, need: 3 })
  const spread = meanAndSpread(values)
  if (!spread.ok) return spread
  const { mean, standardDeviation } = spread.value
  if (standardDeviation === null || standardDeviation === 0)
    return fail({ code: 'cannot-compute', reason: 'no-scatter' })
  const distances = values.map((value) => Math.abs(value - mean))
  const farthest = Math.max(...distances)
  const statistic = farthest / standardDeviation
  const critical = alpha === USUAL ? usualCritical(values.length) : grubbsCritical(values.length, alpha)
  return ok({
    index: distances.indexOf(farthest),
    statistic,
    critical,
    isOutlier: statistic > critical,
  })
}
