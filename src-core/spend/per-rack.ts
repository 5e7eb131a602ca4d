import { DENSITY } from '../drawdown/product-density'
import { rinseVolume } from '../dose/rinse-volume'
import { waterThatLeaves } from '../dose/wash-water'
import { arrivingStrength, pumpAbove } from '../dose/arriving'
import { feedsATank } from '../dose/feeds-a-tank'
import { fail, ok, type Outcome } from '../outcome'
import type { Machine, Product, Pump } from '../records'
import type { Estimate } from '../statistics/estimate'
import { scale } from '../statistics/propagate'
import { inUnit } from '../units/quantity'
import { read, readNumber } from '../units/read'
import type { PumpSetting, PumpUse } from './types'

export interface PerRack {
  readonly doseFrom: PumpUse['doseFrom']
  readonly dose: Outcome<Estimate<'mL/rack'>>
}

/**
 * Product per rack: what the last test left, or, where a probe feeds the wash tank to a target in g/L, the target
 * times the water that leaves the tank per rack over the density (overflow carries that much away, whatever the pump's
 * flow), less what comes over from a second tank.
 * mL/rack. Problems: `no-runs` when never tested; what a probe's target lacks is named.
 */
export function perRack(
  pump: Pump,
  machine: Machine,
  product: Product | null,
  setting: PumpSetting | null,
): PerRack {
  if (pump.control === 'probe' && feedsATank(pump) && pump.window?.basis === 'g-per-L-tank')
    return { doseFrom: 'target', dose: heldByProbe(pump, machine, product) }
  const dose = setting?.dose ?? null
  return dose === null ? { doseFrom: 'none', dose: fail({ code: 'no-runs' }) } : { doseFrom: 'as-left', dose }
}

function heldByProbe(pump: Pump, machine: Machine, product: Product | null): Outcome<Estimate<'mL/rack'>> {
  if (product === null) return fail({ code: 'missing', field: 'pump.productId', needed: 'product' })
  if (product.density === null) return fail({ code: 'missing', field: 'product.density', needed: 'density' })
  const target = readNumber(pump.window?.target ?? null, 'pump.window.target', { low: 0, high: 1000 })
  const density = read(product.density, 'product.density', DENSITY)
  const water = waterThatLeaves(machine, rinseVolume(machine.rinse))
  if (!target.ok) return target
  if (!density.ok) return density
  if (!water.ok) return water
  const above = pumpAbove(machine, pump)
  const arriving = above === null ? null : arrivingStrength(above, ok(inUnit(density.value, 'g/mL')))
  if (arriving !== null && !arriving.ok) return arriving
  const added = Math.max(0, target.value - (arriving?.value.value ?? 0))
  const dose = scale(water.value, added / inUnit(density.value, 'g/mL'), 'mL/rack')
  return dose.ok ? ok({ ...dose.value, predicted: true }) : dose
}
