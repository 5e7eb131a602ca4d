import { chain, fail, type Outcome } from '../outcome'
import type { Estimate } from '../statistics/estimate'
import { product, productStep, propagate, quotient } from '../statistics/propagate'
import type { ActiveStrength } from './product-strength'

/**
 * Dose per rack, mL/rack: D = q t / 60 with q in mL/min and t in s. By definition.
 * Problems: `outside-valid-range`.
 */
export const dosePerRack = (flow: Estimate<'mL/min'>, seconds: Estimate<'s'>): Outcome<Estimate<'mL/rack'>> =>
  product([flow, seconds], 'mL/rack', { times: 1 / 60 })

/**
 * Product in the rinse by volume, ppm v/v: 1e6 D / (1000 V + D), exact. D in mL/rack, V in L of water.
 * Derived; the usual 1000 D / V is high by ppm/1e6 of itself.
 *
 * Problems: `no-water` when there is no water to dose into; `outside-valid-range`.
 */
export function ppmByVolume(dose: Estimate<'mL/rack'>, water: Estimate<'L'>): Outcome<Estimate<'ppm-vv'>> {
  const D = dose.value
  const V = water.value
  if (!(V > 0)) return noWater
  const total = 1000 * V + D
  return propagate((1e6 * D) / total, 'ppm-vv', [
    { of: dose, sensitivity: (1e9 * V) / (total * total) },
    { of: water, sensitivity: (-1e9 * D) / (total * total) },
  ])
}

/**
 * Product in the rinse by mass per litre of water, mg/L: 1000 rho D / V. The product's own volume is ignored, and the
 * water is counted in litres as delivered. The density of a weighed flow is the same density: it cancels.
 *
 * Problems: `no-water`, `outside-valid-range`.
 */
export const productPerLitre = (
  dose: Estimate<'mL/rack'>,
  density: Estimate<'g/mL'>,
  water: Estimate<'L'>,
): Outcome<Estimate<'mg/L-product'>> =>
  water.value > 0
    ? chain(productStep([dose, density], SAME_DENSITY), (mass) =>
        quotient(mass, water, 'mg/L-product', { times: 1000 }),
      )
    : noWater

/**
 * Active substance in the rinse, mg/L. Trade percent T: 10 T D / V. Weight percent w: 10 w rho D / V, rho in g/mL.
 * Source: White, Handbook of Chlorination (1972), definitions.
 *
 * Problems: `no-water`, `missing` density for weight percent, `outside-valid-range`.
 */
export function activePerLitre(
  dose: Estimate<'mL/rack'>,
  strength: ActiveStrength,
  density: Estimate<'g/mL'> | null,
  water: Estimate<'L'>,
): Outcome<Estimate<'mg/L-active'>> {
  if (!(water.value > 0)) return noWater
  if (strength.kind === 'weight-percent' && density === null)
    return fail({ code: 'missing', field: 'product.density', needed: 'density' })
  const factors =
    strength.kind === 'weight-percent' && density !== null
      ? [dose, strength.percent, density]
      : [dose, strength.percent]
  return chain(productStep(factors, { ...SAME_DENSITY, times: 10 }), (mass) =>
    quotient(mass, water, 'mg/L-active'),
  )
}

/**
 * Long-run mean strength in a wash tank that the same racks' rinse water dilutes, g/L of product: m / r with
 * m = rho D in g/rack, r the fresh rinse water in L/rack. Holds whichever way it is fed; derived from the mass balance.
 *
 * Problems: `no-water`, `outside-valid-range`.
 */
export const tankStrength = (
  dose: Estimate<'mL/rack'>,
  density: Estimate<'g/mL'>,
  water: Estimate<'L'>,
): Outcome<Estimate<'g/L-product'>> =>
  water.value > 0
    ? chain(productStep([dose, density], SAME_DENSITY), (mass) => quotient(mass, water, 'g/L-product'))
    : noWater

const noWater: Outcome<never> = fail({ code: 'cannot-compute', reason: 'no-water' })
const SAME_DENSITY = { shared: ['density'] } as const
