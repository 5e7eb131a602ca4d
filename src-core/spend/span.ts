import { busyness, openDaysPerMonth, openPart, type OpenCalendar } from './calendar'
import { dayFromNumber } from '../units/days'

/** What a stretch of days amounts to. */
export interface Span {
  readonly days: number
  /** days on which the machine is filled and run */
  readonly openDays: number
  /** open days weighted by season and growth: racks = racks per day x this */
  readonly rackDays: number
}

/** Open days and weighted open days from day number `from` up to, not including, `to`. Empty when `to` <= `from`. */
export function spanOf(calendar: OpenCalendar, from: number, to: number): Span {
  let openDays = 0
  let rackDays = 0
  for (let day = from; day < to; day += 1) {
    const open = openPart(calendar, day)
    openDays += open
    if (open > 0) rackDays += open * busyness(calendar, day, Number(dayFromNumber(day).slice(5, 7)))
  }
  return { days: Math.max(0, to - from), openDays, rackDays }
}

/**
 * The average month of the coming year: days per week x 365.25/12/7 open days, less the closures of the next 365
 * days, with racks weighted by their seasons and growth. Without any of these it is the plain formula exactly.
 */
export function averageMonth(calendar: OpenCalendar): Span {
  const plain = openDaysPerMonth(calendar)
  const days = plain === 0 ? 0 : (plain * 7) / calendar.daysPerWeek
  const isPlain = calendar.closures.length === 0 && calendar.seasons.size === 0 && calendar.growth === 0
  if (isPlain || plain === 0) return { days, openDays: plain, rackDays: plain }
  const year = spanOf(calendar, calendar.origin, calendar.origin + 365)
  const full = (365 * calendar.daysPerWeek) / 7
  return {
    days,
    openDays: (plain * year.openDays) / full,
    rackDays: (plain * year.rackDays) / full,
  }
}
