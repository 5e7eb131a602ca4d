import { fail, ok, type Outcome } from '../outcome'
import type { Machine } from '../records'
import { readNumber } from '../units/read'
import type { OpenCalendar } from './calendar'
import { countedRacks, type CounterReading } from './counter'
import type { RackRate } from './types'

/** Standard uncertainty, percent, of racks per day that somebody stated without saying how well. Our judgement. */
export const STATED_SPREAD = 10

/**
 * Racks per ordinary open day of a machine: by its counter where that can say, else as stated (0 to 100 000, spread in
 * percent). The gap between the two is kept beside. Problems: `missing` racks per day, or a number out of range.
 */
export function rackRate(
  machine: Pick<Machine, 'racksPerDay' | 'racksSpread'>,
  calendar: OpenCalendar,
  readings: readonly CounterReading[],
): Outcome<RackRate> {
  const counted = countedRacks(readings, calendar)
  const stated =
    machine.racksPerDay === null
      ? null
      : readNumber(machine.racksPerDay, 'machine.racksPerDay', { low: 0, high: 100_000 })
  if (stated !== null && !stated.ok) return stated
  const said = stated?.value ?? null
  if (counted !== null) {
    const gap = said !== null && said > 0 ? counted.perOpenDay / said - 1 : null
    const { perOpenDay, relativeStandard } = counted
    return ok({ from: 'counter', perOpenDay, relativeStandard, stated: said, counted, gap })
  }
  if (said === null) return fail({ code: 'missing', field: 'machine.racksPerDay', needed: 'racks-per-day' })
  const spread =
    machine.racksSpread === null
      ? ok(STATED_SPREAD)
      : readNumber(machine.racksSpread, 'machine.racksSpread', { low: 0, high: 100 })
  if (!spread.ok) return spread
  const relativeStandard = spread.value / 100
  return ok({ from: 'stated', perOpenDay: said, relativeStandard, stated: said, counted, gap: null })
}
