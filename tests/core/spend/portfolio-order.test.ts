import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { packRow, packShown, shownRow, unpackRow, unpackShown } from '#core/documents/row-text'
import type { PortfolioRow } from '#core/spend/portfolio'
import {
  byName,
  currenciesOf,
  inOrder,
  NO_FILTER,
  passing,
  rowFacts,
  SORT_KEYS,
  type Filter,
  type SortKey,
} from '#core/spend/portfolio-order'
import { monthTally, portfolioTotals, productTally } from '#core/spend/portfolio-totals'
import { csvStyle } from '#core/spend/csv'
import { productsCsv, sitesCsv } from '#core/spend/portfolio-csv'
import type { PlannedOrder } from '#core/spend/reorder'
import { shoppingTally } from '#core/spend/shopping-list'
import { Decimal } from '#core/units/decimal'
import { id } from './build'
import { someRows } from './some-rows'

const factsOf = (rows: readonly PortfolioRow[]) => byName(rows.map(rowFacts), 'en')
const plain = (text: string): string => text.normalize('NFD').replace(/[\u0300-\u036f]/gu, '')
const sortings = fc.record({ key: fc.constantFrom(...SORT_KEYS), down: fc.boolean() })
const filters: fc.Arbitrary<Filter> = fc.record({
  words: fc.constantFrom('', 'site', 'CAFE', '2 site', 'nowhere'),
  currency: fc.option(fc.constantFrom('EUR', 'USD')),
  productId: fc.option(fc.constantFrom(id(1), id(2))),
  attentionOnly: fc.boolean(),
})
/** The figure a column shows, read off the row itself. */
const shownFigure = (row: PortfolioRow, key: SortKey): number | null =>
  ({
    name: 0,
    attention: row.attention.length === 0 ? 0 : 1,
    cost: row.cost.isZero() && row.unknownLines > 0 ? null : Number(row.cost),
    perRack: row.costPerRack === null ? null : Number(row.costPerRack),
    racks: row.racks,
    litres: row.products.some((product) => product.litres !== null) ? row.litres : null,
    saved: row.saved?.value ?? null,
  })[key]

describe('the order of all sites', () => {
  it('keeps every site that passes, once, and no other', () => {
    fc.assert(
      fc.property(someRows, filters, sortings, (rows, filter, sorting) => {
        const found = inOrder(passing(factsOf(rows), filter), sorting).map((row) => row.siteId)
        const wanted = rows.filter(
          (row) =>
            filter.words
              .toLowerCase()
              .split(' ')
              .every((word) => plain(row.name).toLowerCase().includes(word)) &&
            (filter.currency ?? row.currency) === row.currency &&
            (filter.productId === null || row.products.some((one) => one.productId === filter.productId)) &&
            (!filter.attentionOnly || row.attention.length > 0),
        )
        expect(found.toSorted()).toEqual(wanted.map((row) => row.siteId).toSorted())
      }),
    )
  })

  it('puts what is not known last either way, in money within its currency', () => {
    fc.assert(
      fc.property(someRows, sortings, (rows, sorting) => {
        fc.pre(sorting.key !== 'name')
        const byId = new Map(rows.map((row) => [row.siteId, row]))
        const found = inOrder(factsOf(rows), sorting).flatMap((row) => byId.get(row.siteId) ?? [])
        const money = ['cost', 'perRack', 'saved'].includes(sorting.key)
        for (const [at, row] of found.entries()) {
          const next = found[at + 1]
          if (next === undefined || (money && next.currency !== row.currency)) continue
          const [a, b] = [shownFigure(row, sorting.key), shownFigure(next, sorting.key)]
          if (a === null) expect(b).toBeNull()
          else if (b !== null && a !== b) expect(a > b).toBe(sorting.down)
        }
      }),
    )
  })

  it('never puts an amount before one of another currency for its number: each currency stands together', () => {
    fc.assert(
      fc.property(someRows, fc.constantFrom('cost', 'perRack', 'saved'), fc.boolean(), (rows, key, down) => {
        const order = inOrder(factsOf(rows), { key, down }).map((row) => row.currency)
        const blocks = order.filter((currency, at) => currency !== order[at - 1])
        expect(blocks).toEqual(currenciesOf(rows))
        const sites = blocks.map((currency) => rows.filter((row) => row.currency === currency).length)
        expect(sites).toEqual(sites.toSorted((a, b) => b - a))
      }),
    )
  })

  it('counts numbers in names, leaves accents aside when looking, and turns round', () => {
    const [row] =
      fc.sample(
        someRows.filter((rows) => rows.length > 3),
        1,
      )[0] ?? []
    if (row === undefined) throw new Error('a row')
    const named = ['Site 10', 'Élan', 'Site 2'].map((name, n) => ({ ...row, name, siteId: id(n + 1) }))
    const names = (down: boolean): readonly string[] =>
      inOrder(factsOf(named), { key: 'name', down }).map((one) => one.name)
    expect(names(false)).toEqual(['Élan', 'Site 2', 'Site 10'])
    expect(names(true)).toEqual(['Site 10', 'Site 2', 'Élan'])
    expect(passing(factsOf(named), { ...NO_FILTER, words: 'elan' })).toHaveLength(1)
  })
})

describe('sums of all sites', () => {
  it('of slices, added row after row, are those of the whole', () => {
    fc.assert(
      fc.property(someRows, fc.integer({ min: 1, max: 9 }), (rows, size) => {
        const whole = [monthTally(), productTally(), shoppingTally('2026-06-15')] as const
        const sliced = [monthTally(), productTally(), shoppingTally('2026-06-15')] as const
        for (const row of rows) for (const tally of whole) tally.add(row)
        for (let from = 0; from < rows.length; from += size)
          for (const row of rows.slice(from, from + size).map((one) => unpackRow(packRow(one))))
            for (const tally of sliced) tally.add(row)
        for (const [at, tally] of sliced.entries()) expect(tally.total()).toEqual(whole[at]?.total())
      }),
    )
  })

  it('are the same from what is kept at hand of a row as from the row', () => {
    fc.assert(
      fc.property(someRows, (rows) => {
        expect(portfolioTotals(rows.map(rowFacts))).toEqual(portfolioTotals(rows))
      }),
    )
  })
})

describe('the rows of a table as text', () => {
  it('come back as they were', () => {
    fc.assert(
      fc.property(someRows, fc.boolean(), (rows, earlier) => {
        const shown = rows.map((row) => shownRow(row, earlier))
        expect(unpackShown(packShown(shown))).toEqual(shown)
      }),
    )
  })
})

describe('a site of whose products nothing is known', () => {
  const row: PortfolioRow = {
    siteId: id(7),
    name: 'New',
    currency: 'SEK',
    asOf: '2026-05-04',
    timeZone: 'Europe/Stockholm',
    cost: new Decimal(0),
    unknownLines: 1,
    costPerRack: null,
    racks: 3000,
    litres: 0,
    products: [{ productId: id(1), name: 'P', litres: null, containers: null, cost: null, reorder: null }],
    months: [],
    saved: null,
    attention: [],
  }

  it('comes last however sites are sorted by litres, and not before those that use little', () => {
    const little: PortfolioRow = {
      ...row,
      siteId: id(8),
      name: 'Old',
      litres: 0.1,
      products: row.products.map((product) => ({ ...product, litres: 0.1 })),
    }
    for (const down of [true, false])
      expect(inOrder(factsOf([row, little]), { key: 'litres', down }).at(-1)?.name).toBe('New')
  })

  it('and a saved table gives the whole days a product lasts, as its shelf does: 22.9 days are 22', () => {
    const order: PlannedOrder = {
      productId: id(1),
      perDay: 1,
      daysOfCover: 22.9,
      runsOutOn: '2026-05-26',
      leadDays: 4,
      safetyStock: 1,
      reorderPoint: 5,
      orderOn: '2026-05-21',
      orderNow: false,
      containers: 1,
      containerLitres: 10,
      cost: { ok: true, value: new Decimal(50) },
      cappedByShelfLife: false,
      containerOutlastsShelfLife: false,
    }
    const products = row.products.map((one) => ({ ...one, reorder: order }))
    const line = productsCsv([{ ...row, products }], csvStyle('point'))
      .trim()
      .split('\r\n')
      .at(-1)
    expect(line?.split(',').at(-2)).toBe('22')
  })

  it('has empty cells in the saved table, which no sum of a spreadsheet takes for nothing', () => {
    const csv = sitesCsv([row], csvStyle('point'), () => '').slice(1)
    const [head = [], cells = []] = csv
      .trim()
      .split('\r\n')
      .map((line) => line.split(','))
    const cell = (name: string): string | undefined => cells[head.indexOf(name)]
    expect([cell('Cost a month'), cell('Litres a month'), cell('Costs not known')]).toEqual(['', '', '1'])
  })
})
