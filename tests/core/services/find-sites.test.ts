import { describe, expect, it } from 'vitest'
import type { SiteRow } from '#core/contract/contract'
import { findSites, inOrder, nameOf } from '#core/services/find-sites'

const row = (name: string, facts: Partial<Extract<SiteRow, { state: 'good' }>> = {}): SiteRow => ({
  state: 'good',
  id: '00000000-0000-4000-8000-000000000001',
  name,
  machines: 1,
  pumps: 2,
  visits: 1,
  lastVisitAt: '2026-10-01T10:00:00.000Z',
  openVisitId: null,
  changedAt: null,
  ...facts,
})
const damaged: SiteRow = { state: 'damaged', name: null, id: 'x', setAside: null, lastGoodAt: null }
const names = (rows: readonly SiteRow[]): readonly string[] => rows.map(nameOf)

describe('finding a site', () => {
  const rows = [row('Café am Hafen'), row('Harbourview Hotel bar'), row('Hotel Café'), damaged]
  it.each([
    ['', ['Café am Hafen', 'Harbourview Hotel bar', 'Hotel Café', 'x']],
    ['cafe', ['Café am Hafen', 'Hotel Café', 'x']],
    ['  HOTEL  caf', ['Hotel Café', 'x']],
    ['nothing', ['x']],
  ])('by %j', (words, found) => {
    expect(names(findSites(rows, words))).toEqual(found)
  })
})

describe('the order of the list', () => {
  it('is what needs somebody first: damaged, open visits, never visited, then longest ago', () => {
    const rows = [
      row('Recent', { lastVisitAt: '2026-11-01T10:00:00.000Z' }),
      row('Site 10'),
      row('Site 2'),
      row('New', { lastVisitAt: null }),
      row('Open', { openVisitId: '00000000-0000-4000-8000-000000000002' }),
      damaged,
    ]
    expect(names(inOrder(rows, 'en'))).toEqual(['x', 'Open', 'New', 'Site 2', 'Site 10', 'Recent'])
  })
})
