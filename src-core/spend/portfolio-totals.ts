import type { CurrencyCode, Id } from '../records'
import { Decimal } from '../units/decimal'
import type { Month } from './months'
import type { PortfolioMonth, PortfolioRow } from './portfolio'
import { sumOf } from './site-use'

export interface CurrencyTotal {
  readonly currency: CurrencyCode
  readonly sites: number
  readonly cost: Decimal
  readonly unknownLines: number
  readonly racks: number
}

/** Totals by currency, the largest number of sites first: money of two currencies is never added. */
export function portfolioTotals(
  rows: readonly Pick<PortfolioRow, 'currency' | 'cost' | 'unknownLines' | 'racks'>[],
): readonly CurrencyTotal[] {
  return byCurrency(rows)
    .map(([currency, own]) => ({
      currency,
      sites: own.length,
      cost: sumOf(own.map((row) => row.cost)),
      unknownLines: own.reduce((sum, row) => sum + row.unknownLines, 0),
      racks: own.reduce((sum, row) => sum + (row.racks ?? 0), 0),
    }))
    .sort((a, b) => b.sites - a.sites)
}

export interface ProductTotal {
  readonly productId: Id
  readonly name: string
  readonly currency: CurrencyCode
  readonly sites: number
  readonly litres: number
  readonly containers: number
  readonly cost: Decimal
  /** sites at which it could not be costed */
  readonly unknown: number
}

/** Adds rows up one after another, so that thousands of them need not be held, or added, at one go. */
export interface Tally<T> {
  readonly add: (row: PortfolioRow) => void
  readonly total: () => T
}

const totalOf = <T>(tally: Tally<T>, rows: readonly PortfolioRow[]): T => {
  for (const row of rows) tally.add(row)
  return tally.total()
}

/**
 * What each product comes to over the sites of one currency: the currency of the largest number of sites first, in it
 * the dearest product.
 */
export const productTotals = (rows: readonly PortfolioRow[]): readonly ProductTotal[] =>
  totalOf(productTally(), rows)

export function productTally(): Tally<readonly ProductTotal[]> {
  const groups = new Map<CurrencyCode, { sites: number; readonly totals: Map<Id, ProductTotal> }>()
  return {
    add: ({ currency, products }) => {
      const group = groups.get(currency) ?? { sites: 0, totals: new Map<Id, ProductTotal>() }
      groups.set(currency, group)
      group.sites += 1
      for (const product of products) {
        const before = group.totals.get(product.productId)
        group.totals.set(product.productId, {
          productId: product.productId,
          name: product.name,
          currency,
          sites: (before?.sites ?? 0) + 1,
          litres: (before?.litres ?? 0) + (product.litres ?? 0),
          containers: (before?.containers ?? 0) + (product.containers ?? 0),
          cost: (before?.cost ?? new Decimal(0)).plus(product.cost ?? 0),
          unknown: (before?.unknown ?? 0) + (product.cost === null ? 1 : 0),
        })
      }
    },
    total: () =>
      [...groups.values()]
        .toSorted((a, b) => b.sites - a.sites)
        .flatMap(({ totals }) => [...totals.values()].sort((a, b) => b.cost.comparedTo(a.cost))),
  }
}

/** Month by month over the sites of one currency, oldest first. */
export const monthTotals = (
  rows: readonly PortfolioRow[],
  currency: CurrencyCode,
): readonly PortfolioMonth[] =>
  totalOf(
    monthTally(),
    rows.filter((row) => row.currency === currency),
  )[0]?.months ?? []

export interface CurrencyMonths {
  readonly currency: CurrencyCode
  readonly months: readonly PortfolioMonth[]
}

/** The same for each currency, in the order they were met. */
export function monthTally(): Tally<readonly CurrencyMonths[]> {
  const groups = new Map<CurrencyCode, Map<Month, PortfolioMonth>>()
  return {
    add: (row) => {
      const totals = groups.get(row.currency) ?? new Map<Month, PortfolioMonth>()
      groups.set(row.currency, totals)
      for (const { month, cost, unknownLines } of row.months) {
        const before = totals.get(month)
        totals.set(month, {
          month,
          cost: before === undefined ? cost : before.cost.plus(cost),
          unknownLines: unknownLines + (before?.unknownLines ?? 0),
        })
      }
    },
    total: () =>
      [...groups].map(([currency, totals]) => ({
        currency,
        months: [...totals.values()].sort((a, b) => (a.month < b.month ? -1 : 1)),
      })),
  }
}

function byCurrency<T extends Pick<PortfolioRow, 'currency'>>(
  rows: readonly T[],
): readonly (readonly [CurrencyCode, readonly T[]])[] {
  const groups = new Map<CurrencyCode, T[]>()
  for (const row of rows) {
    const group = groups.get(row.currency)
    if (group === undefined) groups.set(row.currency, [row])
    else group.push(row)
  }
  return [...groups]
}
