import { oncePer } from '../once'
import { fail, ok, type Outcome } from '../outcome'
import type { Pump } from '../records'
import type { Estimate } from '../statistics/estimate'
import { estimate } from '../statistics/make-estimate'
import { inUnit } from '../units/quantity'
import { read, readNumber } from '../units/read'
import { heldByProbe, type ProbedPump } from './held-by-probe'

/** Standard uncertainty of the seconds a pump runs for a rack when none is stated, percent. Judgement. */
export const SECONDS_SPREAD = 2

/**
 * How long a pump runs for one rack, s, with its doubt.
 *
 * Problems: `probe-controlled` where a probe and not the seconds decide; `missing` dose seconds; those of `read`, 0 to an hour, under `pump.doseSeconds`.
 */
export const doseSeconds = oncePer((pump: TimedPump): Outcome<Estimate<'s'>> => {
  if (heldByProbe(pump)) return fail({ code: 'cannot-compute', reason: 'probe-controlled' })
  if (pump.doseSeconds === null)
    return fail({ code: 'missing', field: 'pump.doseSeconds', needed: 'dose-seconds' })
  const seconds = read(pump.doseSeconds, 'pump.doseSeconds', { above: 0, high: 3600 })
  if (!seconds.ok) return seconds
  const spread =
    pump.doseSecondsSpread === null
      ? ok(SECONDS_SPREAD)
      : readNumber(pump.doseSecondsSpread, 'pump.doseSecondsSpread', { low: 0, high: 100 })
  if (!spread.ok) return spread
  const t = inUnit(seconds.value, 's')
  return estimate(t, 's', [{ source: 'dose-seconds', standard: (t * spread.value) / 100 }])
})

type TimedPump = Pick<Pump, 'doseSeconds' | 'doseSecondsSpread'> & ProbedPump
