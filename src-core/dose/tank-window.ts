import { all, fail, ok, type Outcome } from '../outcome'
import type { Pump } from '../records'
import { readNumber } from '../units/read'

/** A window in g product per litre of wash water. */
export interface TankWindow {
  readonly low: number
  readonly target: number
  readonly high: number
}

/**
 * The pump's window in g/L, from g/L in the tank, mg/L of product, or ppm by volume (1000 ppm of a product of
 * 1.2 g/mL are 1.2 g/L). `density` in g/mL, needed for ppm only.
 *
 * Problems: `missing` window, a number that does not read, `missing` target when the basis does not speak of the tank.
 */
export function tankWindow(pump: Pick<Pump, 'window'>, density: Outcome<number>): Outcome<TankWindow> {
  const { window } = pump
  if (window === null) return fail({ code: 'missing', field: 'pump.window', needed: 'window' })
  const numbers = all([
    readNumber(window.low, 'pump.window.low', { low: 0, high: 1e6 }),
    readNumber(window.target, 'pump.window.target', { low: 0, high: 1e6 }),
    readNumber(window.high, 'pump.window.high', { low: 0, high: 1e6 }),
  ])
  if (!numbers.ok) return numbers
  const [low, target, high] = numbers.value
  const times = (factor: number): Outcome<TankWindow> =>
    ok({ low: low * factor, target: target * factor, high: high * factor })
  switch (window.basis) {
    case 'g-per-L-tank':
      return times(1)
    case 'mg-per-L-product':
      return times(0.001)
    case 'ppm-vv':
      return density.ok ? times(density.value / 1000) : density
    case 'mL-per-rack':
    case 'mg-per-L-active':
      return fail({ code: 'missing', field: 'pump.window', needed: 'target' })
  }
}
