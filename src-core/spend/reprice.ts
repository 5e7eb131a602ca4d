import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { CurrencyCode, Day, NumberText, Product, Scenario } from '../records'
import { Decimal } from '../units/decimal'
import { PLAIN_DECIMAL } from '../units/read'
import { litresOf, priceOn } from './price'

/**
 * A stand-in product of its own id, so that two pumps on one product can be changed apart: price per container and
 * container size as the scenario has them. A new size without a price keeps the price per litre.
 */
export function reprice(
  base: Product,
  change: Scenario['changes'][number],
  asOf: Day,
  currency: CurrencyCode,
): Outcome<Product> {
  const id = `what-if ${change.pumpId}`
  if (change.pricePerContainer === null && change.containerSize === null) return ok({ ...base, id })
  const today = priceOn(base, asOf, currency)
  const size = change.containerSize ?? (today.ok ? null : base.containerSize)
  const litres = size === null ? chain(today, (price) => ok(price.containerLitres)) : litresOf(size)
  const price =
    change.pricePerContainer !== null
      ? decimalPrice(change.pricePerContainer)
      : chain(all([today, litres]), ([was, holds]) => ok(was.perLitre.times(holds)))
  return chain(all([litres, price]), ([holds, amount]) =>
    ok({
      ...base,
      id,
      containerSize: { value: places(holds), unit: 'L' as const },
      prices: [
        {
          from: asOf,
          currency,
          price: places(amount),
          containerSize: { value: places(holds), unit: 'L' as const },
        },
      ],
    }),
  )
}

/** A decimal as an entry holds it. */
export const places = (value: Decimal): string => value.toDecimalPlaces(12).toFixed()

const decimalPrice = (text: NumberText): Outcome<Decimal> =>
  PLAIN_DECIMAL.test(text) && !text.startsWith('-')
    ? ok(new Decimal(text))
    : fail({ code: 'number-unreadable', field: 'scenario.pricePerContainer', text })
