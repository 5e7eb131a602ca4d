import { DENSITY } from '../drawdown/product-density'
import { feedsATank } from '../dose/feeds-a-tank'
import { fail, ok, type Outcome } from '../outcome'
import type { Machine, Product, Pump } from '../records'
import { inUnit } from '../units/quantity'
import { read, readNumber } from '../units/read'

export interface Charge {
  /** product of one fresh fill, mL */
  readonly perFill: number
  readonly fillsPerOpenDay: number
  /** whether the volume follows the pump's flow, and so shares its uncertainty */
  readonly followsFlow: boolean
  /** false: nothing in the record says that this pump charges a fresh fill */
  readonly known: boolean
}

const NONE: Charge = { perFill: 0, fillsPerOpenDay: 0, followsFlow: false, known: true }

/**
 * What a pump puts into a freshly filled wash tank: flow (mL/min) x initial-charge seconds / 60; without seconds, the
 * tank's target (g/L) x tank volume (L) / density (g/mL), in mL. Nothing for the final rinse and for dump-and-refill
 * machines. Needs drain-and-fills per open day (0 to 50) where there is a charge.
 * Source: mass balance of a well-mixed tank filled once, m0 = c* Vt.
 */
export function initialCharge(
  pump: Pump,
  machine: Machine,
  product: Product | null,
  flow: number | null,
): Outcome<Charge> {
  if (!feedsATank(pump) || machine.wash.kind !== 'tank') return ok(NONE)
  const perFill = chargeVolume(pump, machine, product, flow)
  if (!perFill.ok) return perFill
  if (perFill.value === null) return ok({ ...NONE, known: false })
  if (perFill.value === 0) return ok(NONE)
  const fills = readNumber(machine.wash.drainAndFillsPerDay, 'machine.wash.drainAndFillsPerDay', {
    low: 0,
    high: 50,
  })
  if (!fills.ok) return fills
  return ok({
    perFill: perFill.value,
    fillsPerOpenDay: fills.value,
    followsFlow: pump.initialChargeSeconds !== null,
    known: true,
  })
}

function chargeVolume(
  pump: Pump,
  machine: Machine,
  product: Product | null,
  flow: number | null,
): Outcome<number | null> {
  if (pump.initialChargeSeconds !== null) {
    const seconds = read(pump.initialChargeSeconds, 'pump.initialChargeSeconds', { low: 0, high: 3600 })
    if (!seconds.ok) return seconds
    const time = inUnit(seconds.value, 's')
    if (time === 0) return ok(0)
    return flow === null ? fail({ code: 'no-runs' }) : ok((flow * time) / 60)
  }
  const wash = machine.wash
  if (pump.window?.basis !== 'g-per-L-tank' || wash.kind !== 'tank') return ok(null)
  const litres = pump.feeds === 'upstream-tank' ? (wash.upstream?.volume ?? null) : wash.volume
  if (litres === null) return ok(null)
  const entry = product?.density ?? null
  if (entry === null) return ok(null)
  const target = readNumber(pump.window.target, 'pump.window.target', { low: 0, high: 1000 })
  const volume = read(litres, 'machine.wash.volume', { above: 0 })
  const density = read(entry, 'product.density', DENSITY)
  if (!target.ok) return target
  if (!volume.ok) return volume
  if (!density.ok) return density
  return ok((target.value * inUnit(volume.value, 'L')) / inUnit(density.value, 'g/mL'))
}
