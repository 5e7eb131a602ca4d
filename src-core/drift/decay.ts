import { fail, ok, type Outcome } from '../outcome'
import { coverage95 } from '../statistics/distributions'
import { compensatedSum } from '../statistics/sum'
import { daysBetween } from '../units/days'
import { FLOW_DEGREES, SETTLING_DAYS } from './limits'
import type { TubeTests } from './tubes'
import type { Decay, FlowTest } from './types'

/**
 * How fast the flow of one tube falls: ln q = a - rate x age, per day.
 *
 * Weighted least squares with one rate and a level of its own for each stretch between adjustments, so that only
 * as-left against the next as-found counts, never a turn: rate = -sum(w dx dy)/sum(w dx^2) about the means of the
 * stretches, w = (q/u)^2. With one stretch this is the ordinary weighted line; with two tests, ln(q1/q2)/days.
 * The flows' own uncertainties set the interval; scatter about the line beyond them widens it (Birge ratio, in which
 * they count as five degrees of freedom). Tests in the first week of a tube are left out while two later ones remain.
 * Sources: analysis of covariance (Snedecor and Cochran, Statistical Methods, ch. 18) and R. T. Birge, Phys. Rev. 40,
 * 207 (1932), both from memory.
 *
 * Problems: `missing` history with fewer than two tests in any stretch; `no-spread-in-x` when they share a day.
 */
export function decayOf(tube: TubeTests): Outcome<Decay> {
  const start = tube.stretches[0]?.[0]?.day
  if (start === undefined) return fail({ code: 'missing', field: 'visits', needed: 'history' })
  const settled = tube.stretches.map((tests) =>
    tests.filter((test) => tube.from === null || daysBetween(tube.from, test.day) >= SETTLING_DAYS),
  )
  const settledFit = fit(settled, start)
  if (settledFit.ok && settledFit.value.days > 0) return settledFit
  const whole = fit(tube.stretches, start)
  return whole.ok ? ok({ ...whole.value, includesSettling: settledFit.ok !== whole.ok }) : whole
}

const DAYS = 30

/** What is gone after 30 days of ln q = a - rate x age, percent: never all of it. Half-width by first-order propagation. */
function in30Days(rate: number, expanded: number): Decay['in30Days'] {
  const slope = 100 * DAYS * Math.exp(-DAYS * rate)
  return { percent: -100 * Math.expm1(-DAYS * rate), expanded: slope * expanded }
}

interface Point {
  readonly x: number
  readonly y: number
  readonly w: number
}

function fit(stretches: readonly (readonly FlowTest[])[], start: string): Outcome<Decay> {
  const groups = stretches.filter((tests) => tests.length > 1).map((tests) => tests.map(pointFrom(start)))
  if (groups.length === 0) return fail({ code: 'missing', field: 'visits', needed: 'history' })
  const centred = groups.flatMap(aboutItsMean)
  const sxx = compensatedSum(centred.map(({ x, w }) => w * x * x))
  const slope = compensatedSum(centred.map(({ x, y, w }) => w * x * y)) / sxx
  if (!(sxx > 0) || !Number.isFinite(slope)) return fail({ code: 'cannot-compute', reason: 'no-spread-in-x' })
  const chiSquared = compensatedSum(centred.map(({ x, y, w }) => w * (y - slope * x) ** 2))
  const left = centred.length - groups.length - 1
  const widened = Math.max(1, (FLOW_DEGREES + chiSquared) / (FLOW_DEGREES + left))
  const standard = Math.sqrt(widened / sxx)
  const degreesOfFreedom = FLOW_DEGREES + left
  const expanded = coverage95(degreesOfFreedom) * standard
  const xs = groups.flat().map(({ x }) => x)
  const rate = slope === 0 ? 0 : -slope
  const lost = in30Days(rate, expanded)
  if (![rate, expanded, lost.percent, lost.expanded].every(Number.isFinite))
    return fail({ code: 'cannot-compute', reason: 'outside-valid-range' })
  return ok({
    rate,
    standard,
    expanded,
    degreesOfFreedom,
    in30Days: lost,
    tests: centred.length,
    days: Math.max(...xs) - Math.min(...xs),
    direction: Math.abs(rate) <= expanded ? 'steady' : rate > 0 ? 'falling' : 'rising',
    includesSettling: false,
  })
}

/** A relative uncertainty below this is not believed: it would outweigh every other test. */
const SMALLEST_RELATIVE = 0.001

const pointFrom =
  (start: string) =>
  ({ day, flow }: FlowTest): Point => ({
    x: daysBetween(start, day),
    y: Math.log(flow.value),
    w: 1 / Math.max(SMALLEST_RELATIVE, flow.standard / flow.value) ** 2,
  })

function aboutItsMean(points: readonly Point[]): readonly Point[] {
  const total = points.reduce((sum, point) => sum + point.w, 0)
  const mean = (of: (point: Point) => number): number =>
    points.reduce((sum, point) => sum + point.w * of(point), 0) / total
  const x = mean((point) => point.x)
  const y = mean((point) => point.y)
  return points.map((point) => ({ x: point.x - x, y: point.y - y, w: point.w }))
}
