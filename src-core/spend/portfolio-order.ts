import type { CurrencyCode, Day, Id } from '../records'
import { collatorOf } from '../units/collator'
import type { Decimal } from '../units/decimal'
import { plainWords, wordsOf } from '../units/plain-words'
import { pressing } from './attention'
import type { PortfolioRow } from './portfolio'

export const SORT_KEYS = ['name', 'attention', 'cost', 'perRack', 'racks', 'litres', 'saved'] as const
export type SortKey = (typeof SORT_KEYS)[number]

export interface Sorting {
  readonly key: SortKey
  readonly down: boolean
}

export interface Filter {
  readonly words: string
  readonly currency: CurrencyCode | null
  readonly productId: Id | null
  readonly attentionOnly: boolean
}

export const NO_FILTER: Filter = { words: '', currency: null, productId: null, attentionOnly: false }

/** Figures in money: of two currencies neither is more. */
const MONEY: ReadonlySet<SortKey> = new Set(['cost', 'perRack', 'saved'])
export const isMoney = (key: SortKey): boolean => MONEY.has(key)

/** What finding, ordering and adding up need of a row: a tenth of it, so that thousands can be kept at hand. */
export interface RowFacts {
  readonly siteId: Id
  readonly name: string
  readonly plainName: string
  readonly currency: CurrencyCode
  readonly asOf: Day
  readonly timeZone: string
  readonly cost: Decimal
  readonly unknownLines: number
  readonly racks: number | null
  readonly productIds: readonly Id[]
  readonly wanting: boolean
  /** null: not known */
  readonly figures: Readonly<Record<Exclude<SortKey, 'name'>, number | null>>
}

export const rowFacts = (row: PortfolioRow): RowFacts => ({
  siteId: row.siteId,
  name: row.name,
  plainName: plainWords(row.name),
  currency: row.currency,
  asOf: row.asOf,
  timeZone: row.timeZone,
  cost: row.cost,
  unknownLines: row.unknownLines,
  racks: row.racks,
  productIds: row.products.map((product) => product.productId),
  wanting: row.attention.length > 0,
  figures: {
    cost: row.unknownLines > 0 && row.cost.isZero() ? null : row.cost.toNumber(),
    perRack: row.costPerRack?.toNumber() ?? null,
    racks: row.racks,
    litres: litresOf(row),
    saved: row.saved?.value ?? null,
    attention: pressing(row.attention),
  },
})

/** L a month of a site; null when those of no product are known. */
export const litresOf = (row: Pick<PortfolioRow, 'litres' | 'products'>): number | null =>
  row.products.every((product) => product.litres === null) ? null : row.litres

/** By name as a reader of the language named expects it, "Site 2" before "Site 10"; equal names by their ids. */
export function byName<T extends RowFacts>(rows: readonly T[], locale: string): readonly T[] {
  const { compare } = collatorOf(locale, { sensitivity: 'base' })
  return rows.toSorted(
    (a, b) => compare(a.name, b.name) || (a.siteId < b.siteId ? -1 : a.siteId > b.siteId ? 1 : 0),
  )
}

/** The rows that pass, in the order they came in. */
export function passing<T extends RowFacts>(rows: readonly T[], filter: Filter): readonly T[] {
  const words = wordsOf(filter.words)
  const { currency, productId, attentionOnly } = filter
  return rows.filter(
    (row) =>
      words.every((word) => row.plainName.includes(word)) &&
      (currency === null || row.currency === currency) &&
      (productId === null || row.productIds.includes(productId)) &&
      (!attentionOnly || row.wanting),
  )
}

/**
 * Rows that came in by name, in the order wanted. What is not known comes last either way, equals stay by name. Money
 * is ordered within its currency, the currency of the most sites first.
 */
export function inOrder<T extends RowFacts>(rows: readonly T[], { key, down }: Sorting): readonly T[] {
  if (key === 'name') return down ? rows.toReversed() : rows
  const place = isMoney(key) ? currencyPlaces(rows) : null
  const way = down ? -1 : 1
  return rows.toSorted((a, b) => {
    if (place !== null && a.currency !== b.currency)
      return (place.get(a.currency) ?? 0) - (place.get(b.currency) ?? 0)
    const [x, y] = [a.figures[key], b.figures[key]]
    if (x === null || y === null) return x === y ? 0 : x === null ? 1 : -1
    return way * (x - y)
  })
}

/** Currencies by the number of their sites, the most first, then by code. */
export function currenciesOf(rows: readonly Pick<RowFacts, 'currency'>[]): readonly CurrencyCode[] {
  const sites = new Map<CurrencyCode, number>()
  for (const { currency } of rows) sites.set(currency, (sites.get(currency) ?? 0) + 1)
  return [...sites].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1)).map(([currency]) => currency)
}

const currencyPlaces = (rows: readonly RowFacts[]): ReadonlyMap<CurrencyCode, number> =>
  new Map(currenciesOf(rows).map((currency, place) => [currency, place]))
