import { oncePer } from '../once'
import { fail, ok, type Outcome } from '../outcome'
import type { Product } from '../records'
import type { Estimate } from '../statistics/estimate'
import { estimate } from '../statistics/make-estimate'
import { rectangular } from '../statistics/rectangular'
import { readNumber } from '../units/read'

/** How far the strength may be from what is recorded, half-width as a fraction: measured, or from a label. Judgement. */
export const STRENGTH_MEASURED = 0.03
export const STRENGTH_STATED = 0.1

export interface ActiveStrength {
  /** trade: g available chlorine per 100 mL. weight: g active per 100 g */
  readonly kind: 'trade-percent' | 'weight-percent'
  readonly percent: Estimate<'percent'>
  readonly isChlorine: boolean
}

/**
 * Strength of a product in its active substance, percent, with its doubt; null for a product that has none to speak of.
 *
 * Problems: `missing` product; those of `readNumber`, above 0 and up to 100 %.
 */
export const productStrength = (product: Product | null): Outcome<ActiveStrength | null> =>
  product === null
    ? fail({ code: 'missing', field: 'pump.productId', needed: 'product' })
    : strengthOf(product)

const strengthOf = oncePer((product: Product): Outcome<ActiveStrength | null> => {
  const { strength } = product
  if (strength.kind === 'none') return ok(null)
  const percent = readNumber(strength.percent, 'product.strength.percent', { above: 0, high: 100 })
  if (!percent.ok) return percent
  const share = strength.measuredOn === null ? STRENGTH_STATED : STRENGTH_MEASURED
  const known = estimate(percent.value, 'percent', [
    { source: 'strength', standard: rectangular(share * percent.value) },
  ])
  if (!known.ok) return known
  const isChlorine = strength.kind === 'trade-percent' || strength.active === 'available-chlorine'
  return ok({ kind: strength.kind, percent: known.value, isChlorine })
})

/**
 * Weight percent available chlorine from trade percent: T / rho. Percent; rho in g/mL.
 * Source: White, Handbook of Chlorination (1972), as quoted in a product profile.
 */
export const tradeToWeightPercent = (trade: number, density: number): number => trade / density

/** Trade percent from weight percent available chlorine: w x rho. */
export const weightToTradePercent = (weight: number, density: number): number => weight * density

/**
 * Weight percent available chlorine from weight percent sodium hypochlorite, by the molar masses
 * 70.906 / 74.442 (published rounded: 1 / 1.05).
 */
export const hypochloriteToAvailable = (naOCl: number): number => (naOCl * 70.906) / 74.442
