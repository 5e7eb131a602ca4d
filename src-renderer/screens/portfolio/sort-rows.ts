import type { PortfolioRow } from '#core/spend/portfolio'

export type SortKey = 'name' | 'cost' | 'perRack' | 'racks' | 'litres' | 'saved' | 'attention'

export interface Sorting {
  readonly key: SortKey
  readonly down: boolean
}

export interface Filter {
  readonly words: string
  readonly currency: string | null
  readonly productId: string | null
  readonly attentionOnly: boolean
}

export const NO_FILTER: Filter = { words: '', currency: null, productId: null, attentionOnly: false }

/** How pressing a reason is; the heaviest reason of a site counts, then how many it has. */
const WEIGHT = {
  'out-of-window': 7,
  'running-out': 6,
  'visit-overdue': 5,
  unreconciled: 4,
  'order-now': 3,
  'past-its-time': 3,
  'not-tested': 2,
  'cost-unknown': 1,
} as const

const urgency = (row: PortfolioRow): number =>
  row.attention.reduce((most, reason) => Math.max(most, WEIGHT[reason.code]), 0) * 100 + row.attention.length

const FIGURES: Readonly<Record<Exclude<SortKey, 'name'>, (row: PortfolioRow) => number | null>> = {
  cost: (row) => row.cost.toNumber(),
  perRack: (row) => row.costPerRack?.toNumber() ?? null,
  racks: (row) => row.racks,
  litres: (row) => row.litres,
  saved: (row) => row.saved?.value ?? null,
  attention: urgency,
}

const collator = new Intl.Collator(undefined, { numeric: true, sensitivity: 'base' })

/** Rows that pass the filter, in order; what is not known comes last either way, equals stay by name. */
export function arranged(
  rows: readonly PortfolioRow[],
  filter: Filter,
  sorting: Sorting,
): readonly PortfolioRow[] {
  const words = filter.words.trim().toLowerCase().split(/\s+/u)
  const passing = rows.filter(
    (row) =>
      words.every((word) => row.name.toLowerCase().includes(word)) &&
      (filter.currency === null || row.currency === filter.currency) &&
      (filter.productId === null || row.products.some((product) => product.productId === filter.productId)) &&
      (!filter.attentionOnly || row.attention.length > 0),
  )
  const way = sorting.down ? -1 : 1
  const { key } = sorting
  if (key === 'name') return passing.sort((a, b) => way * collator.compare(a.name, b.name))
  return passing
    .map((row) => ({ row, figure: FIGURES[key](row) }))
    .sort((a, b) => {
      if (a.figure === null || b.figure === null)
        return a.figure === b.figure ? collator.compare(a.row.name, b.row.name) : a.figure === null ? 1 : -1
      return way * (a.figure - b.figure) || collator.compare(a.row.name, b.row.name)
    })
    .map(({ row }) => row)
}
