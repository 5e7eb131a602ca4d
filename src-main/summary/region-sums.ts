import { setImmediate as breathe } from 'node:timers/promises'
import type { Input } from '#core/contract/contract'
import { unpackRow } from '#core/documents/row-text'
import { attentionWords } from '#core/messages/attention-words'
import type { Day } from '#core/records/index'
import { csvStyle } from '#core/spend/csv'
import type { PortfolioRow } from '#core/spend/portfolio'
import { monthsCsv, productsCsv, shoppingCsv, sitesCsv } from '#core/spend/portfolio-csv'
import {
  monthTally,
  productTally,
  type CurrencyMonths,
  type ProductTotal,
} from '#core/spend/portfolio-totals'
import {
  isGroup,
  shoppingTally,
  type GroupKey,
  type ShoppingGroup,
  type ShoppingLine,
} from '#core/spend/shopping-list'
import type { KnownRow } from './known-rows'

export interface Sums {
  readonly months: readonly CurrencyMonths[]
  readonly products: readonly ProductTotal[]
  readonly orders: readonly ShoppingGroup[]
}

/** Rows read before other questions are looked at: some milliseconds. */
const AT_ONCE = 100

/** The rows as they are kept, read piece by piece. */
async function* pieces(rows: readonly KnownRow[]): AsyncGenerator<readonly PortfolioRow[]> {
  for (let from = 0; from < rows.length; from += AT_ONCE) {
    yield rows.slice(from, from + AT_ONCE).map(({ text }) => unpackRow(text))
    await breathe()
  }
}

/** What rows come to, and what is to be ordered up to a day. */
export async function sumsOf(rows: readonly KnownRow[], until: Day): Promise<Sums> {
  const [months, products, orders] = [monthTally(), productTally(), shoppingTally(until)]
  for await (const piece of pieces(rows))
    for (const row of piece) for (const tally of [months, products, orders]) tally.add(row)
  return { months: months.total(), products: products.total(), orders: orders.total() }
}

async function ordersOf(rows: readonly KnownRow[], until: Day): Promise<readonly ShoppingGroup[]> {
  const orders = shoppingTally(until)
  for await (const piece of pieces(rows)) for (const row of piece) orders.add(row)
  return orders.total()
}

/** The lines of one group of the shopping list. */
export async function linesOf(
  rows: readonly KnownRow[],
  until: Day,
  key: GroupKey,
): Promise<readonly ShoppingLine[]> {
  const with_ = rows.filter((row) => row.currency === key.currency && row.productIds.includes(key.productId))
  return (await ordersOf(with_, until)).find((group) => isGroup(group, key))?.lines ?? []
}

/** A table of rows as a file of values. */
export async function textsOf(
  rows: readonly KnownRow[],
  { table, decimalSign, until }: Pick<Input<'portfolio.table'>, 'table' | 'decimalSign' | 'until'>,
  productName: (id: string) => string,
): Promise<string> {
  const style = csvStyle(decimalSign)
  if (table === 'orders') return shoppingCsv(await ordersOf(rows, until), style)
  const write = {
    sites: (piece: readonly PortfolioRow[]) =>
      sitesCsv(piece, style, (reason) => attentionWords(reason, productName, decimalSign).word),
    products: (piece: readonly PortfolioRow[]) => productsCsv(piece, style),
    months: (piece: readonly PortfolioRow[]) => monthsCsv(piece, style),
  }[table]
  const head = write([])
  const texts = [head]
  for await (const piece of pieces(rows)) texts.push(write(piece).slice(head.length))
  return texts.join('')
}
