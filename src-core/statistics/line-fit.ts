import { fail, ok, type Outcome } from '../outcome'
import { compensatedSum, compensatedSumOf, usable } from './sum'

export interface Point {
  readonly x: number
  readonly y: number
}

export interface LineFit {
  readonly count: number
  readonly intercept: number
  readonly slope: number
  /** standard errors and the scatter about the line; null for two points, which leave nothing to judge by */
  readonly interceptError: number | null
  readonly slopeError: number | null
  readonly residualDeviation: number | null
  /** n - 2 */
  readonly degreesOfFreedom: number
  /** part of the variance of y that the line explains; null when y does not vary */
  readonly rSquared: number | null
  readonly meanX: number
  /** sum of squared distances of x from its mean */
  readonly spreadX: number
}

/**
 * Ordinary least-squares line y = intercept + slope x, in the units of y and y per x.
 *
 * Sums are taken about the means and compensated, because the raw normal equations lose half the digits
 * (NIST StRD Norris is met to 12). Source of the standard errors: NIST/SEMATECH e-Handbook 4.1.4.1.
 *
 * Problems: `too-few-runs` below two points, `no-spread-in-x` when all x are equal, `outside-valid-range` for numbers
 * that are not finite or beyond 1e100.
 */
export function lineFit(points: readonly Point[]): Outcome<LineFit> {
  const n = points.length
  const xs = points.map((p) => p.x)
  const ys = points.map((p) => p.y)
  if (n < 2) return fail({ code: 'too-few-runs', have: n, need: 2 })
  if (!usable(xs) || !usable(ys)) return fail({ code: 'cannot-compute', reason: 'outside-valid-range' })
  const meanX = centre(xs)
  const meanY = centre(ys)
  const dx = xs.map((x) => x - meanX)
  const dy = ys.map((y) => y - meanY)
  const sxx = compensatedSumOf(dx, (d) => d * d)
  const sxy = compensatedSumOf(dx, (d, i) => d * (dy[i] ?? 0))
  const slope = sxy / sxx
  if (!(sxx > 0) || !Number.isFinite(slope)) return fail({ code: 'cannot-compute', reason: 'no-spread-in-x' })
  const intercept = meanY - slope * meanX
  const residual = compensatedSumOf(dx, (d, i) => ((dy[i] ?? 0) - slope * d) ** 2)
  const syy = compensatedSumOf(dy, (d) => d * d)
  const df = n - 2
  const deviation = df > 0 ? Math.sqrt(residual / df) : null
  const fit: LineFit = {
    count: n,
    intercept,
    slope,
    interceptError: deviation === null ? null : deviation * Math.sqrt(1 / n + (meanX * meanX) / sxx),
    slopeError: deviation === null ? null : deviation / Math.sqrt(sxx),
    residualDeviation: deviation,
    degreesOfFreedom: df,
    rSquared: syy > 0 ? Math.max(0, 1 - residual / syy) : null,
    meanX,
    spreadX: sxx,
  }
  return isFinite(fit) ? ok(fit) : fail({ code: 'cannot-compute', reason: 'outside-valid-range' })
}

function centre(values: readonly number[]): number {
  const first = compensatedSum(values) / values.length
  return first + compensatedSumOf(values, (v) => v - first) / values.length
}

const isFinite = (fit: LineFit): boolean =>
  Object.values(fit).every((value: number | null) => value === null || Number.isFinite(value))
