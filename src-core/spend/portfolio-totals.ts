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
export function portfolioTotals(rows: readonly PortfolioRow[]): readonly CurrencyTotal[] {
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

/**
 * What each product comes to over the sites of one currency: the currency of the largest number of sites first, in it
 * the dearest product.
 */
export function productTotals(rows: readonly PortfolioRow[]): readonly ProductTotal[] {
  return byCurrency(rows)
    .toSorted((a, b) => b[1].length - a[1].length)
    .flatMap(([currency, own]) => {
      const totals = new Map<Id, ProductTotal>()
      for (const product of own.flatMap((row) => row.products)) {
        const before = totals.get(product.productId)
        totals.set(product.productId, {
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
      return [...totals.values()].sort((a, b) => b.cost.comparedTo(a.cost))
    })
}

/** Month by month over the sites of one currency, oldest first. */
export function monthTotals(
  rows: readonly PortfolioRow[],
  currency: CurrencyCode,
): readonly PortfolioMonth[] {
  const months = new Map<Month, PortfolioMonth>()
  for (const { month, cost, unknownLines } of rows
    .filter((row) => row.currency === currency)
    .flatMap((row) => row.months)) {
    const before = months.get(month)
    months.set(month, {
      month,
      cost: cost.plus(before?.cost ?? 0),
      unknownLines: unknownLines + (before?.unknownLines ?? 0),
    })
  }
  return [...months.values()].sort((a, b) => (a.month < b.month ? -1 : 1))
}

function byCurrency(
  rows: readonly PortfolioRow[],
): readonly (readonly [CurrencyCode, readonly PortfolioRow[]])[] {
  const groups = new Map<CurrencyCode, PortfolioRow[]>()
  for (const row of rows) {
    const group = groups.get(row.currency)
    if (group === undefined) groups.set(row.currency, [row])
    else group.push(row)
  }
  return [...groups]
}
