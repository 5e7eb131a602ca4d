import { all, ok, type Outcome } from '../outcome'
import type { Closure, Day, SiteCalendar } from '../records'
import { readNumber } from '../units/read'
import { dayNumberOf } from '../units/days'

/** Days in an average month and weeks in it: the Gregorian mean year of 365.25 days (Julian average) over twelve. */
export const DAYS_PER_MONTH = 365.25 / 12
export const DAYS_PER_YEAR = 365.25

/** A site's calendar with its numbers read, ready to weigh days with. */
export interface OpenCalendar {
  /** 0 to 7 */
  readonly daysPerWeek: number
  /** by month of the year, 1 = an ordinary month */
  readonly seasons: ReadonlyMap<number, number>
  /** fraction a year; 0.1 = a tenth more racks every year */
  readonly growth: number
  readonly closures: readonly { readonly from: number; readonly to: number }[]
  /** the day number at which growth counts as nothing: today */
  readonly origin: number
}

/**
 * Reads a calendar as seen from the day `asOf`. Days per week 0 to 7, season 0 to 1000 %, growth -90 to 500 % a year;
 * anything else is the problem `number-out-of-range` at its field. A closure that ends before it begins counts as
 * nothing.
 */
export function openCalendar(calendar: SiteCalendar, asOf: Day): Outcome<OpenCalendar> {
  const daysPerWeek = readNumber(calendar.daysPerWeek, 'calendar.daysPerWeek', { low: 0, high: 7 })
  const growth =
    calendar.growthPercentPerYear === null
      ? ok(0)
      : readNumber(calendar.growthPercentPerYear, 'calendar.growthPercentPerYear', { low: -90, high: 500 })
  const percents = all(
    calendar.seasons.map((season, index) =>
      readNumber(season.percent, `calendar.seasons.${index}.percent`, { low: 0, high: 1000 }),
    ),
  )
  if (!daysPerWeek.ok) return daysPerWeek
  if (!growth.ok) return growth
  if (!percents.ok) return percents
  const seasons = new Map(
    calendar.seasons.map((season, index) => [season.month, (percents.value[index] ?? 100) / 100]),
  )
  return ok({
    daysPerWeek: daysPerWeek.value,
    seasons,
    growth: growth.value / 100,
    closures: calendar.closures.map(closureDays),
    origin: dayNumberOf(asOf),
  })
}

const closureDays = (closure: Closure): { readonly from: number; readonly to: number } => ({
  from: dayNumberOf(closure.from),
  to: dayNumberOf(closure.to),
})

/** Average open days a month, no closures: days per week x 365.25 / 12 / 7. */
export const openDaysPerMonth = (calendar: OpenCalendar): number =>
  (calendar.daysPerWeek * DAYS_PER_MONTH) / 7

/** What part of an open day one calendar day is: days per week / 7, nothing in a closure. The weekday is not known. */
export const openPart = (calendar: OpenCalendar, day: number): number =>
  isClosed(calendar, day) ? 0 : calendar.daysPerWeek / 7

/** How busy a day is against the stated racks per day: season of its month x growth since (or until) today. */
export function busyness(calendar: OpenCalendar, day: number, month: number): number {
  const growth =
    calendar.growth === 0 ? 1 : (1 + calendar.growth) ** ((day - calendar.origin) / DAYS_PER_YEAR)
  return (calendar.seasons.get(month) ?? 1) * growth
}

/** Days in closures from day number `from` up to, not including, `to`; a day in two of them counts once. */
export function closedDays(calendar: OpenCalendar, from: number, to: number): number {
  let closed = 0
  for (let day = from; day < to; day += 1) if (isClosed(calendar, day)) closed += 1
  return closed
}

const isClosed = (calendar: OpenCalendar, day: number): boolean =>
  calendar.closures.some(({ from, to }) => day >= from && day <= to)
