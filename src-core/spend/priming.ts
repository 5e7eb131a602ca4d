import { ok, type Outcome } from '../outcome'
import type { Pump } from '../records'
import { inUnit } from '../units/quantity'
import { read } from '../units/read'

/** How long a pump is held running after the last bubble, s. Common practice, no source. */
export const PRIME_HOLD_SECONDS = 60

/**
 * Product lost at one container change, mL: the line's content, pi/4 d^2 L, and what runs while the prime is held,
 * flow (mL/min) x 60 s. Null when bore or length of the line are not recorded.
 */
export function primingLoss(pump: Pump, flow: number | null): Outcome<number | null> {
  const { bore, lineLength } = pump.tube
  if (bore === null || lineLength === null) return ok(null)
  const d = read(bore, 'pump.tube.bore', { low: 0, high: 50 })
  const length = read(lineLength, 'pump.tube.lineLength', { low: 0, high: 50_000 })
  if (!d.ok) return d
  if (!length.ok) return length
  const cubicMillimetres = (Math.PI / 4) * inUnit(d.value, 'mm') ** 2 * inUnit(length.value, 'mm')
  return ok(cubicMillimetres / 1000 + ((flow ?? 0) * PRIME_HOLD_SECONDS) / 60)
}
