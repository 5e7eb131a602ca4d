import { all, chain, fail, ok, type Outcome } from '../outcome'
import { productDensity } from '../drawdown/product-density'
import type { Machine, Product, Pump, RinseWater, Wash, WindowBasis } from '../records'
import type { Estimate } from '../statistics/estimate'
import { sum } from '../statistics/propagate'
import { arrivingStrength, pumpAbove } from './arriving'
import { activePerLitre, ppmByVolume, productPerLitre, tankStrength } from './concentration'
import { feedsATank } from './feeds-a-tank'
import { productStrength } from './product-strength'
import { rinseVolume } from './rinse-volume'
import type { BasisUnit } from './types'
import { waterThatLeaves } from './wash-water'

/** What a dose meets: the fresh rinse water of a rack, the wash it may feed, and what is in the container. */
export interface DoseContext {
  readonly rinse: RinseWater | null
  readonly product: Product | null
  /** absent: all of the rinse water replaces the tank */
  readonly wash?: Wash
  /** the pump whose product comes over from the second tank; absent: none does */
  readonly above?: Pump
}

/** The context of a pump's product on a machine. */
export function doseContext(
  machine: Pick<Machine, 'rinse' | 'wash' | 'pumps'>,
  product: Product | null,
  pump: Pick<Pump, 'feeds' | 'productId'>,
): DoseContext {
  const { rinse, wash } = machine
  const above = pumpAbove(machine, pump)
  return above === null ? { rinse, wash, product } : { rinse, wash, product, above }
}

/** What the tank gets besides the dose, g/L of product: the strength that comes over from the second tank, or null. */
export const arriving = ({ above, product }: DoseContext): Outcome<Estimate<'g/L-product'> | null> =>
  above === undefined
    ? ok(null)
    : arrivingStrength(
        above,
        chain(productDensity(product), (density) => ok(density.value)),
      )

/** The water a dose on a basis is held against, L per rack: the fresh rinse, or for a tank what leaves it. */
export const waterFor = (basis: WindowBasis, { rinse, wash }: DoseContext): Outcome<Estimate<'L'>> =>
  basis === 'g-per-L-tank' && wash !== undefined
    ? waterThatLeaves({ wash }, rinseVolume(rinse))
    : rinseVolume(rinse)

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
  return chain(waterFor(basis, context), (water): Outcome<Estimate<BasisUnit>> => {
    if (basis === 'ppm-vv') return ppmByVolume(dose, water)
    if (basis === 'mg-per-L-active') return active(dose, water, context.product)
    return chain(productDensity(context.product), (density): Outcome<Estimate<BasisUnit>> =>
      basis === 'mg-per-L-product'
        ? productPerLitre(dose, density, water)
        : chain(all([tankStrength(dose, density, water), arriving(context)]), ([own, more]) =>
            more === null ? ok(own) : sum([own, more], 'g/L-product', { shared: ['density'] }),
          ),
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
 * Every basis a pump's product can have a concentration on where it goes: in the final rinse ppm v/v, mg/L of product
 * and, when the product has a strength, mg/L active; in the wash tank g/L of product.
 */
export const basesOf = (pump: Pick<Pump, 'feeds'>, { product }: DoseContext): readonly WindowBasis[] =>
  feedsATank(pump) ? TANK : product === null || product.strength.kind === 'none' ? RINSE : ACTIVE

const TANK: readonly WindowBasis[] = ['g-per-L-tank']
const RINSE: readonly WindowBasis[] = ['ppm-vv', 'mg-per-L-product']
const ACTIVE: readonly WindowBasis[] = [...RINSE, 'mg-per-L-active']

/** Every concentration on those bases. Each says what it lacks. */
export const strengthsOf = (
  dose: Estimate<'mL/rack'>,
  pump: Pick<Pump, 'feeds'>,
  context: DoseContext,
): readonly Outcome<Estimate<BasisUnit>>[] =>
  basesOf(pump, context).map((basis) => onBasis(basis, dose, context))
