import { fail, ok, type Outcome } from '../outcome'
import { compensatedSum, compensatedSumOf, usable } from './sum'

export interface MeanAndSpread {
  readonly count: number
  readonly mean: number
  /** n - 1 in the denominator; null for one value */
  readonly standardDeviation: number | null
  /** standard deviation over the root of n; null for one value */
  readonly standardError: number | null
}

/**
 * Mean and sample standard deviation, in the unit of the values.
 *
 * Two passes with correction (Chan, Golub and LeVeque 1983, "Algorithms for computing the sample variance"), on
 * compensated sums: the textbook sum of squares loses all digits on readings such as 10000001, 10000002, 10000003;
 * this keeps as many as the doubles hold (NIST StRD NumAcc1 to 3).
 *
 * Problems: `no-runs` for an empty list, `outside-valid-range` for a value that is not finite or beyond 1e100.
 */
export function meanAndSpread(values: readonly number[]): Outcome<MeanAndSpread> {
  const n = values.length
  if (n === 0) return fail({ code: 'no-runs' })
  if (!usable(values)) return fail({ code: 'cannot-compute', reason: 'outside-valid-range' })
  const first = compensatedSum(values) / n
  // What rounding left in the mean; zero in exact arithmetic.
  const residue = compensatedSumOf(values, (value) => value - first)
  const mean = first + residue / n
  if (n === 1) return ok({ count: 1, mean, standardDeviation: null, standardError: null })
  const squares =
    compensatedSumOf(values, (value) => (value - first) * (value - first)) - (residue * residue) / n
  const standardDeviation = Math.sqrt(Math.max(0, squares) / (n - 1))
  return ok({ count: n, mean, standardDeviation, standardError: standardDeviation / Math.sqrt(n) })
}
