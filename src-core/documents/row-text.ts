import type { Outcome } from '../outcome'
import type { PortfolioMonth, PortfolioProduct, PortfolioRow } from '../spend/portfolio'
import type { PlannedOrder } from '../spend/reorder'
import { Decimal } from '../units/decimal'

/** Decimals as the text they print as; months, the bulk of a row, without the names of their parts. */
interface Packed extends Omit<PortfolioRow, 'cost' | 'costPerRack' | 'products' | 'months'> {
  readonly cost: string
  readonly costPerRack: string | null
  readonly products: readonly PackedProduct[]
  readonly months: readonly (readonly [string, string, number])[]
}
interface PackedProduct extends Omit<PortfolioProduct, 'cost' | 'reorder'> {
  readonly cost: string | null
  readonly reorder: (Omit<PlannedOrder, 'cost'> & { readonly cost: Outcome<string> }) | null
}

/** A portfolio row as one line of text: what the index keeps and the wire carries. */
export const packRow = (row: PortfolioRow): string =>
  JSON.stringify({
    ...row,
    months: row.months.map(({ month, cost, unknownLines }) => [month, cost, unknownLines]),
  })

/** The row of a text made by `packRow`, equal to the one it was made from. Months are read when first asked for. */
export function unpackRow(text: string): PortfolioRow {
  const packed = JSON.parse(text) as Packed
  let months: readonly PortfolioMonth[] | null = null
  return {
    ...packed,
    cost: new Decimal(packed.cost),
    costPerRack: packed.costPerRack === null ? null : new Decimal(packed.costPerRack),
    products: packed.products.map(unpackProduct),
    get months() {
      return (months ??= packed.months.map(([month, cost, unknownLines]) => ({
        month,
        cost: new Decimal(cost),
        unknownLines,
      })))
    },
  }
}

const unpackProduct = (product: PackedProduct): PortfolioProduct => ({
  ...product,
  cost: product.cost === null ? null : new Decimal(product.cost),
  reorder: product.reorder === null ? null : { ...product.reorder, cost: unpackCost(product.reorder.cost) },
})

const unpackCost = (cost: Outcome<string>): Outcome<Decimal> =>
  cost.ok ? { ok: true, value: new Decimal(cost.value) } : cost

/** The part of a row that a table shows; `earlier`: its figures hold for an earlier day than today at the site. */
export interface ShownRow extends Omit<PortfolioRow, 'products' | 'months'> {
  readonly earlier: boolean
}

type PackedShown = Omit<ShownRow, 'cost' | 'costPerRack'> & Pick<Packed, 'cost' | 'costPerRack'>

export const shownRow = ({ products: _p, months: _m, ...row }: PortfolioRow, earlier: boolean): ShownRow => ({
  ...row,
  earlier,
})

/** Rows of a table as one text, and back. */
export const packShown = (rows: readonly ShownRow[]): string => JSON.stringify(rows)

export const unpackShown = (text: string): readonly ShownRow[] =>
  (JSON.parse(text) as readonly PackedShown[]).map((row) => ({
    ...row,
    cost: new Decimal(row.cost),
    costPerRack: row.costPerRack === null ? null : new Decimal(row.costPerRack),
  }))
