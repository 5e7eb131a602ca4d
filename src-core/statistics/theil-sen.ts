import { fail, ok, type Outcome } from '../outcome'
import type { Point } from './line-fit'
import { median } from './median'
import { usable } from './sum'

/**
 * Line by the median of all pairwise slopes and the median of the residuals: one wild point does not turn it.
 * Units of y and y per x. Source: Helsel and Hirsch, Statistical Methods in Water Resources, chapter 10.
 *
 * Problems: `too-few-runs` below two points, `no-spread-in-x` when all x are equal, `outside-valid-range` for numbers
 * that are not finite or beyond 1e100.
 */
export function theilSen(
  points: readonly Point[],
): Outcome<{ readonly slope: number; readonly intercept: number }> {
  if (points.length < 2) return fail({ code: 'too-few-runs', have: points.length, need: 2 })
  if (!usable(points.flatMap((p) => [p.x, p.y])))
    return fail({ code: 'cannot-compute', reason: 'outside-valid-range' })
  const slopes = points.flatMap((a, i) =>
    points.slice(i + 1).flatMap((b) => (a.x === b.x ? [] : [(b.y - a.y) / (b.x - a.x)])),
  )
  const slope = median(slopes)
  if (slope === null) return fail({ code: 'cannot-compute', reason: 'no-spread-in-x' })
  const intercept = median(points.map((p) => p.y - slope * p.x)) ?? 0
  return Number.isFinite(slope) && Number.isFinite(intercept)
    ? ok({ slope, intercept })
    : fail({ code: 'cannot-compute', reason: 'outside-valid-range' })
}
