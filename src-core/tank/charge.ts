import { all, ok, within, type Outcome } from '../outcome'
import { lostPerRack } from './decay'
import { volumeOf, waterPerRack } from './model'
import type { WashModel } from './types'

const MOST_TARGET = 1e4

/**
 * Product for a fresh fill, g: target x volume less what is still there, never below zero.
 * `target` and `residual` in g/L, `residualVolume` the litres that stayed in the tank.
 * A dump-and-refill machine needs none once it runs; this is what its first fill of the day would take.
 *
 * Problems: a number out of range. Source: mass balance, m0 = c* V - c_residual V_residual (derived).
 */
export function initialChargeGrams(
  model: WashModel,
  target: number,
  residual = 0,
  residualVolume = 0,
): Outcome<number> {
  const read = all([
    within(target, 0, MOST_TARGET, 'target', 'g/L-product'),
    within(residual, 0, MOST_TARGET, 'residual', 'g/L-product'),
    within(residualVolume, 0, volumeOf(model), 'residualVolume', 'L'),
  ])
  if (!read.ok) return read
  const [wanted, left, litres] = read.value
  return ok(Math.max(0, wanted * volumeOf(model) - left * litres))
}

/**
 * Product per rack that holds a target, g. `hold: 'mean'` holds the mean over a rack: target x water that leaves.
 * `hold: 'peak'` keeps the strength just after a slug at the target: V x target x (1 - kept).
 *
 * Problems: a number out of range. Source: mass balance, m = c* r_net (derived).
 */
export function rechargeGrams(
  model: WashModel,
  target: number,
  hold: 'mean' | 'peak' = 'mean',
): Outcome<number> {
  const read = within(target, 0, MOST_TARGET, 'target', 'g/L-product')
  if (!read.ok) return read
  if (model.kind === 'tank' && model.feeding === 'slug' && hold === 'peak')
    return ok(model.volume * target * lostPerRack(model))
  return ok(target * waterPerRack(model))
}

/**
 * The same in mL for a target given as product by volume, `ppm` v/v: ppm/1000 per litre of water.
 * 0.3 % is 3000 ppm. Problems: a number out of range.
 */
export function volumesForTarget(
  model: WashModel,
  ppm: number,
): Outcome<{ readonly initialMillilitres: number; readonly rechargeMillilitres: number }> {
  const read = within(ppm, 0, 1e6, 'target', 'ppm-vv')
  if (!read.ok) return read
  return ok({
    initialMillilitres: (ppm / 1000) * volumeOf(model),
    rechargeMillilitres: (ppm / 1000) * waterPerRack(model),
  })
}

/**
 * How long a pump runs for a mass of product, s: 60 m / (rho q). `grams` g, `density` g/mL, `flow` mL/min.
 * Problems: a number out of range; a flow of zero is one.
 */
export function secondsFor(grams: number, density: number, flow: number): Outcome<number> {
  const read = all([
    within(grams, 0, 1e9, 'dose', 'g'),
    within(density, 0.8, 1.6, 'product.density', 'g/mL'),
    within(flow, 0.001, 1e6, 'flow', 'mL/min'),
  ])
  if (!read.ok) return read
  const [m, rho, q] = read.value
  return ok((60 * m) / (rho * q))
}
