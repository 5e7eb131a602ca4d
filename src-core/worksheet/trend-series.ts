import type { Verdict } from '../dose/types'
import { forecast } from '../drift/forecast'
import type { Id } from '../records'
import type { ResultUnit } from '../statistics/estimate'
import { dayNumberOf } from '../units/days'
import type { PumpTrend } from './pump-trend'
import type { Band, TrendTest, TrendVisit } from './trend-visit'

/** What of a pump is followed over the visits. */
export type TrendScale = 'flow' | 'dose' | 'strength'

/** One test on one scale; `day` counts from 1970-01-01, as everywhere here. */
export interface SeriesPoint {
  readonly day: number
  readonly visitId: Id
  readonly kind: 'found' | 'left'
  /** nothing was tested after it: what was found was left */
  readonly alone: boolean
  readonly value: number
  readonly low: number
  readonly high: number
  readonly verdict: Verdict | null
  readonly trusted: boolean
}

export interface TrendSeries {
  readonly unit: ResultUnit
  readonly points: readonly SeriesPoint[]
  readonly band: readonly (Band & { readonly day: number })[]
  /** from the last trusted test onward; empty where no rate is known */
  readonly forecast: readonly {
    readonly day: number
    readonly value: number
    readonly low: number
    readonly high: number
  }[]
}

/** How far a forecast is drawn: somewhat past the day it leaves, a month at least, eight months at most. */
const SHORTEST = 30
const LONGEST = 240

/**
 * Everything a chart of one pump on one scale shows, in the unit of its last test: where a window was once on another
 * basis, those strengths are left out. Null when no test gives a figure.
 */
export function trendSeries(trend: PumpTrend, scale: TrendScale): TrendSeries | null {
  const unit = testsOf(trend).findLast((test) => test[scale] !== null)?.[scale]?.unit
  if (unit === undefined) return null
  return {
    unit,
    points: trend.visits.flatMap((visit) => [
      ...point(visit, visit.found, 'found', scale, unit),
      ...point(visit, visit.left, 'left', scale, unit),
    ]),
    band: trend.visits.flatMap((visit) => {
      const band = visit.window[scale]
      return band === null || visit.found[scale]?.unit !== unit
        ? []
        : [{ day: dayNumberOf(visit.day), ...band }]
    }),
    forecast: outlookOn(trend, scale),
  }
}

function point(
  visit: TrendVisit,
  test: TrendTest | null,
  kind: SeriesPoint['kind'],
  scale: TrendScale,
  unit: ResultUnit,
): readonly SeriesPoint[] {
  const on = test?.[scale] ?? null
  if (test === null || on === null || on.unit !== unit) return []
  return [
    {
      day: dayNumberOf(visit.day),
      visitId: visit.visitId,
      kind,
      alone: visit.left === null,
      value: on.value,
      low: on.low,
      high: on.high,
      verdict: test.verdict,
      trusted: test.trusted,
    },
  ]
}

const testsOf = (trend: PumpTrend): readonly TrendTest[] =>
  trend.visits.flatMap((visit) => (visit.left === null ? [visit.found] : [visit.found, visit.left]))

function outlookOn(trend: PumpTrend, scale: TrendScale): TrendSeries['forecast'] {
  const { outlook, leaving } = trend.drift
  if (!outlook.ok) return []
  const { test, decay } = outlook.value
  const start = testsOf(trend).find((one) => one.testId === test.testId)?.[scale] ?? null
  if (start === null) return []
  const leaves = leaving.ok ? (leaving.value.days ?? leaving.value.earliest) : null
  const days = Math.min(LONGEST, Math.max(SHORTEST, 1.2 * (leaves ?? SHORTEST * 3)))
  const from = dayNumberOf(test.day)
  return forecast(start, decay, days).map(({ days: later, value, low, high }) => ({
    day: from + later,
    value,
    low,
    high,
  }))
}
