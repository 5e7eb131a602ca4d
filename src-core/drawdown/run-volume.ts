import { fail, ok, type Outcome } from '../outcome'
import type { Run, TestMethod } from '../records'
import { inUnit } from '../units/quantity'
import { read } from '../units/read'
import { amountOf } from './instrument-limits'

/** What was read off the instrument in one run: mL, or g on a scale. Nothing is corrected yet. */
export interface RawRun {
  readonly amount: number
  readonly readings: readonly number[]
}

/**
 * The amount one run moved, straight from its readings. Draw-down: start - end, mL. Catch: end - start, an empty cup
 * when `start` is null, mL. Weighed: the difference of two masses either way round, g, since the container that
 * empties or the cup that fills may stand on the scale.
 *
 * `where` is the path of the run in its record, `capacity` what the instrument holds in the same unit.
 *
 * Problems: `number-missing`, `number-unreadable`, `unit-unknown`, `end-above-start` (draw-down), `over-capacity`,
 * `number-out-of-range` (catch that ends below its start).
 */
export function rawRun(
  run: Run,
  method: TestMethod,
  capacity: number | null,
  where: string,
): Outcome<RawRun> {
  const measures = method === 'weighed' ? 'mass' : 'volume'
  const isEmptyCup = method === 'catch' && run.start === null
  const start = isEmptyCup ? ok(0) : amountOf(run.start, measures, `${where}.start`)
  if (!start.ok) return start
  const end = amountOf(run.end, measures, `${where}.end`)
  if (!end.ok) return end
  const unit = measures === 'mass' ? 'g' : 'mL'
  if (capacity !== null && Math.max(start.value, end.value) > capacity)
    return fail({
      code: 'over-capacity',
      field: `${where}.${end.value > capacity ? 'end' : 'start'}`,
      capacity: `${Number(capacity.toPrecision(6))} ${unit}`,
    })
  const fall = start.value - end.value
  if (method === 'draw-down' && fall < 0) return fail({ code: 'end-above-start', field: `${where}.end` })
  if (method === 'catch' && fall > 0)
    return fail({ code: 'number-out-of-range', field: `${where}.end`, low: start.value, high: null, unit })
  return ok({
    amount: Math.abs(fall),
    readings: isEmptyCup ? [end.value] : [start.value, end.value],
  })
}

/** Longest run that is still one: an hour. A longer time is a stopwatch that was forgotten. */
const LONGEST = 3600

/** Seconds of a run. Problems: those of `read`, above 0 and up to an hour. */
export function runSeconds(run: Run, where: string): Outcome<number> {
  const seconds = read(run.seconds, `${where}.seconds`, { above: 0, high: LONGEST })
  return seconds.ok ? ok(inUnit(seconds.value, 's')) : seconds
}
