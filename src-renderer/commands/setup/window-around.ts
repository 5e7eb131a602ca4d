import type { NumberText, ProductRole, TargetWindow, WindowBasis } from '#core/records/index'
import { Decimal } from '#core/units/decimal'

/**
 * The basis a window of this role is usually given on: what the rinse should carry for rinse aid, the active substance
 * for a sanitizer, the strength of the tank for detergent. Common practice, no source.
 */
export const usualBasis = (role: ProductRole): WindowBasis =>
  role === 'rinse-aid'
    ? 'ppm-vv'
    : role === 'sanitizer'
      ? 'mg-per-L-active'
      : role === 'detergent'
        ? 'g-per-L-tank'
        : 'mL-per-rack'

/** Half-width offered around a target: one state rule asks chemical feeders for 10 % of the dosage at any setting. */
const SHARE = '0.1'

/** A window of 10 % to either side of a target, written to the digits it needs. Null unless the target is above zero. */
export function windowAround(basis: WindowBasis, target: NumberText): TargetWindow | null {
  const middle = new Decimal(target)
  if (!middle.greaterThan(0)) return null
  const step = middle.times(SHARE)
  return { basis, low: middle.minus(step).toFixed(), target, high: middle.plus(step).toFixed() }
}
