import { volumeOf } from './model'
import type { WashModel } from './types'

/**
 * Part of the product that is still there after one rack without dosing, 0 to 1:
 * continuous exp(-r/V), mix then overflow V/(V+r), displacement 1 - r/V, dump and refill heel/V.
 * A tank whose water is pushed out whole keeps nothing. Source: mass balance (derived); the continuous one is the
 * ordinary stirred-tank equation.
 */
export const keptPerRack = (model: WashModel): number => 1 - lostPerRack(model)

/** The complement of `keptPerRack`, without the cancellation of 1 - (1 - x) for a small share. */
export function lostPerRack(model: WashModel): number {
  if (model.kind === 'dump-and-refill') return model.fill / volumeOf(model)
  const x = model.netWater / model.volume
  switch (model.closure) {
    case 'continuous':
      return -Math.expm1(-x)
    case 'mix-then-overflow':
      return x / (1 + x)
    case 'displacement':
      return Math.min(1, x)
  }
}

/** What is left after `racks` racks, 0 to 1. Fewer than none, or no number at all, counts as none. */
export function keptAfter(model: WashModel, racks: number): number {
  if (!(racks > 0)) return 1
  const lost = lostPerRack(model)
  return lost >= 1 ? 0 : Math.exp(racks * Math.log1p(-lost))
}

/**
 * Racks in which a difference falls to 1/e of itself: exactly V/r in the continuous closure, -1/ln(kept) in all.
 * 0 when one rack replaces everything.
 */
export function timeConstant(model: WashModel): number {
  const lost = lostPerRack(model)
  return lost >= 1 ? 0 : -1 / Math.log1p(-lost)
}

/** Time constants to wait before the strength says anything about the setting: 3, after which 95 % of a change is in. */
export const WAIT_CONSTANTS = 3

/** Whole racks to wash after a fill or a change before the tank is tested: 3 time constants, at least one rack. */
export const racksBeforeTest = (model: WashModel): number =>
  Math.max(1, Math.ceil(WAIT_CONSTANTS * timeConstant(model) - 1e-9))

/** Racks until `share` (0 to below 1) of a change is in. 95 %: 2.996 time constants. No share takes no racks. */
export const racksUntil = (model: WashModel, share: number): number =>
  !(share > 0) ? 0 : -Math.log1p(-Math.min(share, 1 - 1e-12)) * timeConstant(model)
