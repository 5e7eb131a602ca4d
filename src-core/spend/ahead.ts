import { DAYS_PER_MONTH, DAYS_PER_YEAR, type OpenCalendar } from './calendar'
import { averageMonth, spanOf } from './span'

/** Litres expected to be used from today up to a number of days ahead (0 or more, whole or not). */
export type UseAhead = (days: number) => number

/** Beyond this a date says nothing. */
export const FAR_DAYS = 3650
/** The calendar is followed day by day this far; after it every day is an average one. */
const FOLLOWED_DAYS = Math.floor(2 * DAYS_PER_YEAR)

/** Use that is the same every day, L a day. */
export const steadyUse =
  (perDay: number): UseAhead =>
  (days) =>
    perDay * days

/**
 * Use as the calendar has it: an average month's litres over its weighted open days, times the weighted open days to
 * come. Nothing is used while the site is closed. Fresh fills are taken to follow the racks.
 */
export function useAhead(calendar: OpenCalendar, perMonth: number): UseAhead {
  const perRackDay = perMonth / averageMonth(calendar).rackDays
  const plain = calendar.closures.length === 0 && calendar.seasons.size === 0 && calendar.growth === 0
  if (plain || !Number.isFinite(perRackDay)) return steadyUse(perMonth / DAYS_PER_MONTH)
  const whole = (days: number): number =>
    perRackDay * spanOf(calendar, calendar.origin, calendar.origin + days).rackDays
  return (days) => {
    if (days > FOLLOWED_DAYS)
      return whole(FOLLOWED_DAYS) + ((days - FOLLOWED_DAYS) * perMonth) / DAYS_PER_MONTH
    const day = Math.floor(days)
    const before = whole(day)
    return days === day ? before : before + (days - day) * (whole(day + 1) - before)
  }
}

/** Days until so many litres are used, with the part of the last day; at most `FAR_DAYS`. */
export function daysUntil(ahead: UseAhead, litres: number): number {
  if (litres <= 0) return 0
  let [low, high] = [0, FAR_DAYS]
  if (ahead(high) < litres) return FAR_DAYS
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2)
    if (ahead(middle) < litres) low = middle
    else high = middle
  }
  const used = ahead(low)
  return low + (litres - used) / (ahead(high) - used)
}
