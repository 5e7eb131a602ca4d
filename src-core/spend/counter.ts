import type { Day, Instant, Visit } from '../records'
import { readNumber } from '../units/read'
import type { OpenCalendar } from './calendar'
import { dayFromNumber, dayNumberOf } from '../units/days'
import { spanOf } from './span'
import type { CountedRacks } from './types'

export interface CounterReading {
  readonly at: Instant
  readonly count: number
}

/** Readings nearer together than this say too little about a week. Our judgement. */
const SHORTEST_DAYS = 7
const LONGEST_DAYS = 366
/** One end of a stretch lies somewhere in its day: half a day either way, rectangular (GUM 4.3.7). */
const END_DAYS = 0.5 / Math.sqrt(3)

/** Rack counter readings of a machine over all visits, in order of time; unreadable ones are left out. */
export function counterReadings(visits: readonly Visit[], machineId: string): readonly CounterReading[] {
  const readings = visits.flatMap((visit) =>
    visit.readings.flatMap((reading) => {
      if (reading.machineId !== machineId || reading.kind !== 'rack-counter') return []
      const count = readNumber(reading.count ?? reading.value?.value ?? null, 'reading.count', { low: 0 })
      return count.ok ? [{ at: reading.at, count: count.value }] : []
    }),
  )
  return readings.sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0))
}

interface Stretch {
  readonly from: number
  readonly to: number
  readonly racks: number
}

/**
 * Racks per ordinary open day from counter readings, in the year up to today or `within` two days: racks counted over
 * the days between, weighted as the calendar weighs them. A step back (counter changed or set to zero) is left out.
 * Null when less than a week, no open day or no rack lies between.
 */
export function countedRacks(
  readings: readonly CounterReading[],
  calendar: OpenCalendar,
  within: { readonly from: Day; readonly to: Day } | null = null,
): CountedRacks | null {
  const first = within === null ? calendar.origin - LONGEST_DAYS : dayNumberOf(within.from)
  // what was read this evening may be tomorrow in UTC, as `doneOn` has it
  const last = within === null ? calendar.origin + 1 : dayNumberOf(within.to)
  const stretches = stretchesOf(readings, first, last)
  const from = stretches[0]?.from
  const to = stretches.at(-1)?.to
  if (from === undefined || to === undefined) return null
  let racks = 0
  let days = 0
  let rackDays = 0
  for (const stretch of stretches) {
    racks += stretch.racks
    days += stretch.to - stretch.from
    rackDays += spanOf(calendar, stretch.from, stretch.to).rackDays
  }
  if (days < SHORTEST_DAYS || !(rackDays > 0) || racks === 0) return null
  return {
    from: dayFromNumber(from),
    to: dayFromNumber(to),
    racks,
    perOpenDay: racks / rackDays,
    relativeStandard: (Math.SQRT2 * END_DAYS) / days,
  }
}

function stretchesOf(readings: readonly CounterReading[], first: number, last: number): readonly Stretch[] {
  const stretches: Stretch[] = []
  let before: { readonly day: number; readonly count: number } | null = null
  for (const { at, count } of readings) {
    const day = dayNumberOf(at)
    if (day < first || day > last) continue
    const goesOn = before !== null && count >= before.count
    if (goesOn && before !== null && day === before.day) continue
    if (goesOn && before !== null) stretches.push({ from: before.day, to: day, racks: count - before.count })
    before = { day, count }
  }
  return stretches
}
