import { chain, fail, ok, type Outcome } from '../outcome'
import type { CurrencyCode, Day, Product } from '../records'
import { litresOf, priceOn } from './price'

/**
 * Litres in a container of a product on a day: the size its price row of that day names, else the product's own.
 * Problem: `missing` container size.
 */
export function containerOf(product: Product, day: Day, currency: CurrencyCode): Outcome<number> {
  const price = priceOn(product, day, currency)
  if (price.ok) return ok(price.value.containerLitres.toNumber())
  if (product.containerSize === null)
    return fail({ code: 'missing', field: 'product.containerSize', needed: 'container-size' })
  return chain(litresOf(product.containerSize), (litres) => ok(litres.toNumber()))
}
