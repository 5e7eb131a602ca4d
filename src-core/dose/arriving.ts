import type { Outcome } from '../outcome'
import type { Machine, Pump } from '../records'
import type { Estimate } from '../statistics/estimate'
import { estimate } from '../statistics/make-estimate'
import { rectangular } from '../statistics/rectangular'
import { tankWindow } from './tank-window'

/**
 * The pump whose product comes over the weir into the tank this one feeds: it feeds the second tank of the same machine
 * with the same product. Null for a pump of the second tank itself, and where there is no such pump.
 */
export function pumpAbove(machine: Pick<Machine, 'wash' | 'pumps'>, pump: Feeder): Pump | null {
  if (machine.wash.kind !== 'tank' || machine.wash.upstream === null) return null
  if (pump.feeds !== 'wash-tank' || pump.productId === null) return null
  return (
    machine.pumps.find((one) => one.feeds === 'upstream-tank' && one.productId === pump.productId) ?? null
  )
}

type Feeder = Pick<Pump, 'feeds' | 'productId'>

/**
 * Strength of the water that comes over the weir, g/L of product: the target of the pump above, known no better than
 * its window is wide (rectangular). Each pump answers for its own tank, so a fault of one does not hide in the other.
 *
 * Problems: those of its window; density in g/mL is needed for a window in ppm only.
 */
export function arrivingStrength(
  above: Pick<Pump, 'window'>,
  density: Outcome<number>,
): Outcome<Estimate<'g/L-product'>> {
  const window = tankWindow(above, density)
  if (!window.ok) return window
  const { low, target, high } = window.value
  return estimate(target, 'g/L-product', [
    { source: 'tank-above', standard: rectangular(Math.max(0, high - low) / 2) },
  ])
}
