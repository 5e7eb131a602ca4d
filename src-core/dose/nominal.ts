import { productDensity } from '../drawdown/product-density'
import { chain, fail, ok, type Outcome } from '../outcome'
import type { Product } from '../records'
import { exactly } from '../statistics/make-estimate'
import { onBasis, type DoseContext } from './on-basis'
import { productStrength } from './product-strength'

/** mg/L active that `dose` mL/rack gives, on the figures as they stand. Problems as `onBasis`. */
export const activeOf = (dose: number, context: DoseContext): Outcome<number> =>
  chain(exactly(dose, 'mL/rack'), (one) =>
    chain(onBasis('mg-per-L-active', one, context), (active) => ok(active.value)),
  )

/**
 * mg/L active that a product gives at `ppm` v/v, by its recorded strength: 10 T D / V with D / V = p / (1e6 - p) L per L,
 * that is 1e4 T p / (1e6 - p) for T in trade percent; weight percent times density in its place.
 * Problems: `missing` product, strength or density; `outside-valid-range` from a million ppm up.
 */
export const activeOfPpm = (ppm: number, product: Product | null): Outcome<number> =>
  chain(productStrength(product), (strength) => {
    if (strength === null) return fail({ code: 'missing', field: 'product.strength', needed: 'strength' })
    const density =
      strength.kind === 'trade-percent' ? ok(1) : chain(productDensity(product), (known) => ok(known.value))
    return chain(density, (rho) => {
      const active = (1e4 * strength.percent.value * rho * ppm) / (1e6 - ppm)
      return ppm >= 0 && ppm < 1e6
        ? ok(active)
        : fail({ code: 'cannot-compute', reason: 'outside-valid-range' })
    })
  })
