import { chain, fail, ok, type Outcome } from '../outcome'
import { productDensity } from '../drawdown/product-density'
import type { Product, Pump, RinseWater, WindowBasis } from '../records'
import type { Estimate } from '../statistics/estimate'
import { activePerLitre, ppmByVolume, productPerLitre, tankStrength } from './concentration'
import { productStrength } from './product-strength'
import { rinseVolume } from './rinse-volume'
import type { BasisUnit } from './types'

/** What a dose meets: the fresh rinse water of a rack, and what is in the container. */
export interface DoseContext {
  readonly rinse: RinseWater | null
  readonly product: Product | null
}

/**
 * A dose per rack on a named basis, with every uncertainty of the way there.
 *
 * Problems: whatever the basis needs and has not got (`missing` rinse volume, product, density, strength), the
 * problems of those entries, `no-water`, `outside-valid-range`.
 */
export function onBasis(
  basis: WindowBasis,
  dose: Estimate<'mL/rack'>,
  context: DoseContext,
): Outcome<Estimate<BasisUnit>> {
  if (basis === 'mL-per-rack') return ok(dose)
  return chain(rinseVolume(context.rinse), (water): Outcome<Estimate<BasisUnit>> => {
    if (basis === 'ppm-vv') return ppmByVolume(dose, water)
    if (basis === 'mg-per-L-active') return active(dose, water, context.product)
    return chain(productDensity(context.product), (density): Outcome<Estimate<BasisUnit>> =>
      basis === 'mg-per-L-product'
        ? productPerLitre(dose, density, water)
        : tankStrength(dose, density, water),
    )
  })
}

function active(
  dose: Estimate<'mL/rack'>,
  water: Estimate<'L'>,
  product: Product | null,
): Outcome<Estimate<'mg/L-active'>> {
  return chain(productStrength(product), (strength) => {
    if (strength === null) return fail({ code: 'missing', field: 'product.strength', needed: 'strength' })
    if (strength.kind === 'trade-percent') return activePerLitre(dose, strength, null, water)
    return chain(productDensity(product), (density) => activePerLitre(dose, strength, density, water))
  })
}

/**
 * Every concentration a pump's product can have where it goes: in the final rinse ppm v/v, mg/L of product and, when
 * the product has a strength, mg/L active; in the wash tank g/L of product. Each says what it lacks.
 */
export function strengthsOf(
  dose: Estimate<'mL/rack'>,
  pump: Pick<Pump, 'feeds'>,
  context: DoseContext,
): readonly Outcome<Estimate<BasisUnit>>[] {
  if (pump.feeds === 'wash-tank') return [onBasis('g-per-L-tank', dose, context)]
  const bases: readonly WindowBasis[] =
    context.product === null || context.product.strength.kind === 'none'
      ? ['ppm-vv', 'mg-per-L-product']
      : ['ppm-vv', 'mg-per-L-product', 'mg-per-L-active']
  return bases.map((basis) => onBasis(basis, dose, context))
}
