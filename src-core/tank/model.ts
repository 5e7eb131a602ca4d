import { all, fail, ok, within, type Outcome } from '../outcome'
import type { Closure, DumpModel, Feeding, TankModel, WashModel } from './types'

/** Far outside any machine; inside it no formula of this folder overflows. Litres. */
const LEAST = 0.001
const MOST = 100_000

/**
 * A recirculating tank. `volume`, fresh `rinse` water per rack and `carriedOut` (film on ware, and vapour) in litres;
 * what is carried out leaves without product, so only rinse less carriedOut overflows with it.
 *
 * Problems: a volume out of range; `no-overflow` when as much is carried out as comes in.
 * Source: mass balance of a stirred tank of constant volume (derived).
 */
export function tankModel(input: {
  readonly volume: number
  readonly rinse: number
  readonly carriedOut: number
  readonly closure: Closure
  readonly feeding: Feeding
}): Outcome<TankModel> {
  const read = all([
    within(input.volume, LEAST, MOST, 'wash.volume', 'L'),
    within(input.rinse, LEAST, MOST, 'rinse', 'L'),
    within(input.carriedOut, 0, MOST, 'wash.carriedOut', 'L'),
  ])
  if (!read.ok) return read
  const [volume, rinse, carriedOut] = read.value
  const netWater = rinse - carriedOut
  if (netWater < LEAST) return fail({ code: 'cannot-compute', reason: 'no-overflow' })
  const { closure, feeding } = input
  return ok({ kind: 'tank', volume, netWater, closure, feeding } as TankModel)
}

/**
 * A dump-and-refill machine. `heel` and `fill` in litres. Problems: a volume out of range.
 */
export function dumpModel(heel: number, fill: number): Outcome<DumpModel> {
  const read = all([within(heel, 0, MOST, 'wash.heel', 'L'), within(fill, LEAST, MOST, 'wash.fill', 'L')])
  if (!read.ok) return read
  const [kept, fresh] = read.value
  return ok({ kind: 'dump-and-refill', heel: kept, fill: fresh } as DumpModel)
}

/** Litres in the machine when it is full. */
export const volumeOf = (model: WashModel): number =>
  model.kind === 'tank' ? model.volume : model.heel + model.fill

/** Litres that leave with product in them, per rack. */
export const waterPerRack = (model: WashModel): number =>
  model.kind === 'tank' ? model.netWater : model.fill
