import { oncePer } from '../once'
import { fail, ok, type Outcome } from '../outcome'
import type { CurrencyCode, Day, PriceRow, Product } from '../records'
import { Decimal } from '../units/decimal'
import { convertExactly } from '../units/quantity'
import { PLAIN_DECIMAL } from '../units/read'
import type { PriceOnDay } from './types'

/**
 * The price of a product on a day, in the site's currency: the last row that begins on or before that day; of two rows
 * of one day the later in the list. `perLitre` is price over container size in litres, unrounded.
 * Problems: `no-price` when no row has begun; `currencies-differ` when only another currency has; a price below zero
 * or a container of no size is `number-out-of-range`.
 */
export function priceOn(
  product: Pick<Product, 'name' | 'prices'>,
  day: Day,
  currency: CurrencyCode,
): Outcome<PriceOnDay> {
  const begun = product.prices.filter((row) => row.from <= day)
  const own = begun.filter((row) => row.currency === currency)
  const row = own.reduce<PriceRow | null>((best, next) => (best && best.from > next.from ? best : next), null)
  if (row !== null) return readPrice(row)
  const foreign = begun[0]
  return foreign === undefined
    ? fail({ code: 'no-price', product: product.name })
    : fail({ code: 'currencies-differ', first: currency, second: foreign.currency })
}

const readPrice = oncePer((row: PriceRow): Outcome<PriceOnDay> => {
  if (!PLAIN_DECIMAL.test(row.price))
    return fail({ code: 'number-unreadable', field: 'product.prices.price', text: row.price })
  const litres = litresOf(row.containerSize)
  if (!litres.ok) return litres
  const perContainer = new Decimal(row.price)
  if (perContainer.isNegative())
    return fail({
      code: 'number-out-of-range',
      field: 'product.prices.price',
      low: 0,
      high: null,
      unit: row.currency,
    })
  return ok({
    from: row.from,
    currency: row.currency,
    perContainer,
    containerLitres: litres.value,
    perLitre: perContainer.div(litres.value),
  })
})

/** A container size in litres, exactly; it must hold something. */
export function litresOf(size: PriceRow['containerSize']): Outcome<Decimal> {
  const field = 'product.containerSize'
  if (!PLAIN_DECIMAL.test(size.value)) return fail({ code: 'number-unreadable', field, text: size.value })
  const litres = convertExactly(size.value, size.unit, 'L')
  return litres.gt(0)
    ? ok(litres)
    : fail({ code: 'number-out-of-range', field, low: 0, high: null, unit: 'L' })
}
