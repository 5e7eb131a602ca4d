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
  if (to <= from) return { days: 0, openDays: 0, rackDays: 0 }
  const sums = sumsOf(calendar)
  const inside = from >= sums.first && to <= sums.first + REACH * 2
  if (inside) {
    const [a, b] = [from - sums.first, to - sums.first]
    return {
      days: to - from,
      openDays: (sums.open[b] ?? 0) - (sums.open[a] ?? 0),
      rackDays: (sums.racks[b] ?? 0) - (sums.racks[a] ?? 0),
    }
  }
  let openDays = 0
  let rackDays = 0
  for (let day = from; day < to; day += 1) {
    const [open, racks] = weightsOf(calendar, day)
    openDays += open
    rackDays += racks
  }
  return { days: to - from, openDays, rackDays }
}

function weightsOf(calendar: OpenCalendar, day: number): readonly [number, number] {
  const open = openPart(calendar, day)
  if (open === 0) return [0, 0]
  const month = calendar.seasons.size === 0 ? 1 : Number(dayFromNumber(day).slice(5, 7))
  return [open, open * busyness(calendar, day, month)]
}

/** Running sums over some two years either way of today: months, visits and counts ask for the same days many times. */
const REACH = 800
interface Sums {
  readonly first: number
  readonly open: Float64Array
  readonly racks: Float64Array
}
const known = new WeakMap<OpenCalendar, Sums>()

function sumsOf(calendar: OpenCalendar): Sums {
  const before = known.get(calendar)
  if (before !== undefined) return before
  const first = calendar.origin - REACH
  const open = new Float64Array(REACH * 2 + 1)
  const racks = new Float64Array(REACH * 2 + 1)
  for (let i = 0; i < REACH * 2; i += 1) {
    const [o, r] = weightsOf(calendar, first + i)
    open[i + 1] = (open[i] ?? 0) + o
    racks[i + 1] = (racks[i] ?? 0) + r
  }
  const sums = { first, open, racks }
  known.set(calendar, sums)
  return sums
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
