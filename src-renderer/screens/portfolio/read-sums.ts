import type { Output } from '#core/contract/contract'
import type { CurrencyMonths, CurrencyTotal, ProductTotal } from '#core/spend/portfolio-totals'
import { Decimal } from '#core/units/decimal'

type WireSums = Output<'portfolio.sums'>

/** What the sites of a view come to. */
export interface RegionSums {
  readonly months: readonly CurrencyMonths[]
  readonly products: readonly ProductTotal[]
  readonly orders: readonly OrderGroup[]
}
export type OrderGroup = Omit<WireSums['orders'][number], 'cost'> & { readonly cost: Decimal }

const withCost = <T extends { readonly cost: string }>(
  one: T,
): Omit<T, 'cost'> & { readonly cost: Decimal } => ({
  ...one,
  cost: new Decimal(one.cost),
})

/** Sums as they travel, with their money as numbers again. */
export const readSums = ({ months, products, orders }: WireSums): RegionSums => ({
  months: months.map(({ currency, months }) => ({ currency, months: months.map(withCost) })),
  products: products.map(withCost),
  orders: orders.map(withCost),
})

export const readTotals = (totals: Output<'portfolio.view'>['totals']): readonly CurrencyTotal[] =>
  totals.map(withCost)
