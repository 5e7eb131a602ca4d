import type { SiteRow } from '#core/contract/contract'

const plain = (text: string): string => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase()

/** Rows whose name holds every word typed, in any order, accents and case aside. Damaged rows always stay in sight. */
export function findSites(rows: readonly SiteRow[], words: string): readonly SiteRow[] {
  const wanted = plain(words).split(/\s+/u).filter(Boolean)
  if (wanted.length === 0) return rows
  return rows.filter((row) => row.state !== 'good' || wanted.every((word) => plain(row.name).includes(word)))
}

/** Damaged first, then open visits, then those not seen for longest; never visited ones before all that were. */
export const inOrder = (rows: readonly SiteRow[]): readonly SiteRow[] =>
  rows
    .map((row) => ({ row, rank: rank(row) }))
    .sort((a, b) =>
      a.rank < b.rank ? -1 : a.rank > b.rank ? 1 : byName.compare(nameOf(a.row), nameOf(b.row)),
    )
    .map(({ row }) => row)

/** "Site 2" before "Site 10" */
const byName = new Intl.Collator(undefined, { numeric: true })

function rank(row: SiteRow): string {
  if (row.state !== 'good') return '0'
  if (row.openVisitId !== null) return '1'
  return `2${row.lastVisitAt ?? ''}`
}

export const nameOf = (row: SiteRow): string => (row.state === 'good' ? row.name : row.id)
