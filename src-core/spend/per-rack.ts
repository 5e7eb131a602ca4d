import { fail, ok, type Outcome } from '../outcome'
import type { Machine, Product, Pump } from '../records'
import type { Estimate } from '../statistics/estimate'
import { estimate } from '../statistics/make-estimate'
import { inUnit } from '../units/quantity'
import { read, readNumber } from '../units/read'
import type { PumpSetting, PumpUse } from './types'

/** Standard uncertainty of the fresh water per rack when the record gives none, percent. Our judgement. */
const WATER_SPREAD = 5

export interface PerRack {
  readonly doseFrom: PumpUse['doseFrom']
  readonly dose: Outcome<Estimate<'mL/rack'>>
}

/**
 * Product per rack: what the last test left, or, where a probe feeds the wash tank to a target in g/L, the target
 * times the fresh water per rack over the density (overflow carries that much away, whatever the pump's flow).
 * mL/rack. Problems: `no-runs` when never tested; what a probe's target lacks is named.
 */
export function perRack(
  pump: Pump,
  machine: Machine,
  product: Product | null,
  setting: PumpSetting | null,
): PerRack {
  if (pump.control === 'probe' && pump.feeds === 'wash-tank' && pump.window?.basis === 'g-per-L-tank')
    return { doseFrom: 'target', dose: heldByProbe(pump, machine, product) }
  const dose = setting?.dose ?? null
  return dose === null ? { doseFrom: 'none', dose: fail({ code: 'no-runs' }) } : { doseFrom: 'as-left', dose }
}

function heldByProbe(pump: Pump, machine: Machine, product: Product | null): Outcome<Estimate<'mL/rack'>> {
  if (product === null) return fail({ code: 'missing', field: 'pump.productId', needed: 'product' })
  if (product.density === null) return fail({ code: 'missing', field: 'product.density', needed: 'density' })
  const target = readNumber(pump.window?.target ?? null, 'pump.window.target', { low: 0, high: 1000 })
  const density = read(product.density, 'product.density', { low: 0.5, high: 2.5 })
  const water = freshWater(machine)
  if (!target.ok) return target
  if (!density.ok) return density
  if (!water.ok) return water
  const value = (target.value * water.value.litres) / inUnit(density.value, 'g/mL')
  return estimate(value, 'mL/rack', [{ source: 'rinse-volume', standard: value * water.value.relative }], {
    predicted: true,
  })
}

/** Fresh final-rinse water of a rack, L, and its relative standard uncertainty. */
export function freshWater(
  machine: Pick<Machine, 'rinse'>,
): Outcome<{ readonly litres: number; readonly relative: number }> {
  const rinse = machine.rinse
  if (rinse === null) return fail({ code: 'missing', field: 'machine.rinse', needed: 'rinse-volume' })
  const spread =
    rinse.spread === null
      ? ok(WATER_SPREAD)
      : readNumber(rinse.spread, 'machine.rinse.spread', { low: 0, high: 100 })
  if (!spread.ok) return spread
  const relative = spread.value / 100
  if (rinse.kind !== 'flow-and-seconds') {
    const perRack = read(rinse.perRack, 'machine.rinse.perRack', { above: 0 })
    return perRack.ok ? ok({ litres: inUnit(perRack.value, 'L'), relative }) : perRack
  }
  const flow = read(rinse.flow, 'machine.rinse.flow', { above: 0 })
  const seconds = read(rinse.seconds, 'machine.rinse.seconds', { above: 0 })
  if (!flow.ok) return flow
  if (!seconds.ok) return seconds
  return ok({ litres: (inUnit(flow.value, 'L/min') * inUnit(seconds.value, 's')) / 60, relative })
}
