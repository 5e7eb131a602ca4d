import type { SiteRow } from '../contract/contract'
import { collatorOf } from '../units/collator'
import { plainWords, wordsOf } from '../units/plain-words'

/** Rows are the same objects from key to key, so each name is made plain once. */
const plainNames = new WeakMap<SiteRow, string>()

function plainName(row: SiteRow): string {
  const known = plainNames.get(row)
  if (known !== undefined) return known
  const plain = plainWords(nameOf(row))
  plainNames.set(row, plain)
  return plain
}

/**
 * Rows whose name holds every word typed, in any order, accents and case aside, in the order they came in. Damaged rows
 * always stay in sight.
 */
export function findSites(rows: readonly SiteRow[], words: string): readonly SiteRow[] {
  const wanted = wordsOf(words)
  if (wanted.length === 0) return rows
  return rows.filter((row) => row.state !== 'good' || wanted.every((word) => plainName(row).includes(word)))
}

/**
 * Damaged first, then open visits, then those not seen for longest; never visited ones before all that were. Equals by
 * name as a reader of the language named expects it, "Site 2" before "Site 10".
 */
export function inOrder(rows: readonly SiteRow[], locale: string): readonly SiteRow[] {
  const byName = collatorOf(locale)
  return rows
    .map((row) => ({ row, rank: rank(row) }))
    .sort((a, b) =>
      a.rank < b.rank ? -1 : a.rank > b.rank ? 1 : byName.compare(nameOf(a.row), nameOf(b.row)),
    )
    .map(({ row }) => row)
}

function rank(row: SiteRow): string {
  if (row.state !== 'good') return '0'
  if (row.openVisitId !== null) return '1'
  return `2${row.lastVisitAt ?? ''}`
}

export const nameOf = (row: SiteRow): string => (row.state === 'good' ? row.name : row.id)
