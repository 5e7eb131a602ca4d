import { fail, ok, type Outcome } from '../outcome'
import { RUN_REPEATABILITY, TIMER_STANDARD } from './predicted-flow'
import type { VolumeDoubt } from './types'

/** What a test is to reach. */
export interface WantedTest {
  /** mL/min, roughly known */
  readonly flow: number
  readonly runs: number
  /** relative standard uncertainty wanted of the mean, as a fraction */
  readonly relative: number
  /** fraction; `RUN_REPEATABILITY` unless the pump is known better */
  readonly repeatability?: number
}

/**
 * Seconds each of `runs` runs must last for a wanted relative standard uncertainty w of their mean flow:
 *
 * t = sqrt((A/n + B)/(w^2 - cv^2/n - f^2)), A = (60 u_reading/q)^2 + (60 u_pulse/q)^2 + u_timer^2 (varies from run to
 * run), B = (60 u_tolerance/q)^2 (shared), f the relative doubt of tube factor or density, which time does not cure.
 * Derived from the budget of `predictedFlow`. Longer runs help more than more runs, because the tolerance is shared.
 *
 * Problems: `unreachable-precision` when no time would do, `zero-flow`, `missing` graduation, `outside-valid-range`.
 */
export function secondsNeeded(wanted: WantedTest, doubt: VolumeDoubt): Outcome<number> {
  const { flow: q, runs: n, relative: w } = wanted
  if (!(q > 0)) return fail({ code: 'cannot-compute', reason: 'zero-flow' })
  if (doubt.reading === null)
    return fail({ code: 'missing', field: 'instrument.graduation', needed: 'graduation' })
  const cv = wanted.repeatability ?? RUN_REPEATABILITY
  const pulse = doubt.pulsesPerMinute === null ? 0 : 60 / doubt.pulsesPerMinute / Math.sqrt(6)
  const A = ((60 * doubt.reading) / q) ** 2 + pulse ** 2 + TIMER_STANDARD ** 2
  const B = ((60 * doubt.instrument.standard) / q) ** 2
  const fixed = doubt.factors.reduce((sum, factor) => sum + factor.relative ** 2, 0)
  const room = w * w - (cv * cv) / n - fixed
  if (!(room > 0)) return fail({ code: 'cannot-compute', reason: 'unreachable-precision' })
  const seconds = Math.sqrt((A / n + B) / room)
  return Number.isFinite(seconds) && n >= 1
    ? ok(seconds)
    : fail({ code: 'cannot-compute', reason: 'outside-valid-range' })
}
