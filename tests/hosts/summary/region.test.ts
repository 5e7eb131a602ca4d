import { readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { decode } from '#core/documents/decode'
import { DEFAULT_SETTINGS } from '#core/documents/default-settings'
import { encode } from '#core/documents/encode'
import { unpackShown } from '#core/documents/row-text'
import { csvStyle } from '#core/spend/csv'
import { monthsCsv, productsCsv, shoppingCsv } from '#core/spend/portfolio-csv'
import { NO_FILTER, SORT_KEYS, type Filter, type Sorting } from '#core/spend/portfolio-order'
import { portfolioTotals, productTotals } from '#core/spend/portfolio-totals'
import { shoppingList } from '#core/spend/shopping-list'
import { siteRow, type Library } from '#core/worksheet/site-row'
import { prepareDataFolder } from '#main/storage/data-folder'
import { dayIn } from '#main/summary/day-in'
import { Region } from '#main/summary/region'
import { writeManySites } from '../../bench/many-sites'
import { bigSite } from '../../bench/big-site'
import { removeFolder, tempFolder } from '../../contract/program'
import { good } from '../../support/outcomes'

const NOW = '2026-11-25T12:00:00.000Z'
const SITES = 30
const UNTIL = '2027-01-10'

let root: string
let region: Region
let library: Library
let rows: readonly ReturnType<typeof siteRow>[]

const view = (filter: Partial<Filter> = {}, sorting: Sorting = { key: 'name', down: false }) => ({
  filter: { ...NO_FILTER, ...filter },
  sorting,
  locale: 'en',
})

const byCode = (a: { currency: string }, b: { currency: string }): number =>
  a.currency < b.currency ? -1 : 1

beforeAll(async () => {
  root = tempFolder()
  prepareDataFolder(root)
  writeManySites(root, SITES)
  const read = (name: string): string => readFileSync(join(root, name), 'utf8')
  library = {
    products: good(decode('products', read('library/products.json'))).document.products,
    instruments: good(decode('instruments', read('library/instruments.json'))).document.instruments,
    settings: DEFAULT_SETTINGS,
  }
  rows = readdirSync(join(root, 'sites'))
    .filter((name) => !name.includes('last-good'))
    .map((name) => {
      const { site } = good(decode('site', read(`sites/${name}`))).document
      const dayOf = (instant: string): string => dayIn(instant, site.timeZone)
      return siteRow(site, library, dayOf(NOW), dayOf)
    })
  region = new Region({ root, program: 'one', now: () => NOW, patience: 60_000 })
  await whole()
}, 120_000)
afterAll(() => {
  region.close()
  removeFolder(root)
})

async function whole(): Promise<string> {
  for (let first = true; ; first = false) {
    const { running, version } = await region.progress(first ? library : null)
    if (!running) return version
    await new Promise((go) => setTimeout(go, 1))
  }
}

describe('a region', () => {
  it('shown slice by slice is the whole list, in every order', async () => {
    for (const key of SORT_KEYS)
      for (const down of [false, true]) {
        const sorting = { key, down }
        const all = await region.view({ view: view({}, sorting), version: '', from: 0, count: 1000 })
        expect(all.total).toBe(SITES)
        const slices: string[] = []
        for (let from = 0; from < SITES; from += 7) {
          const part = await region.rows({ view: view({}, sorting), version: all.version, from, count: 7 })
          expect(part.version).toBe(all.version)
          slices.push(...unpackShown(part.rows).map((row) => row.siteId))
        }
        expect(slices).toEqual(unpackShown(all.rows).map((row) => row.siteId))
        expect(new Set(slices)).toEqual(new Set(rows.map((row) => row.siteId)))
      }
  })

  it('comes to the same as its rows added up one by one', async () => {
    for (const filter of [{}, { currency: 'EUR' }, { words: 'hotel' }, { attentionOnly: true }]) {
      const own = rows.filter(
        (row) =>
          (filter.currency ?? row.currency) === row.currency &&
          row.name.toLowerCase().includes(filter.words ?? '') &&
          (filter.attentionOnly !== true || row.attention.length > 0),
      )
      const ask = { view: view(filter), version: '', from: 0, count: 1 }
      const { totals, wanting } = await region.view(ask)
      const plain = portfolioTotals(own).map((total) => ({ ...total, cost: total.cost.toString() }))
      expect(totals.toSorted(byCode)).toEqual(plain.toSorted(byCode))
      expect(wanting).toBe(rows.filter((row) => row.attention.length > 0).length)
      const sums = await region.sums({ view: view(filter), version: '', until: UNTIL })
      const cost = new Map(sums.products.map((one) => [`${one.productId} ${one.currency}`, one.cost]))
      expect(cost).toEqual(
        new Map(productTotals(own).map((one) => [`${one.productId} ${one.currency}`, one.cost.toString()])),
      )
      expect(sums.orders.map((one) => [one.productId, one.containers, one.cost]).toSorted()).toEqual(
        shoppingList(own, UNTIL)
          .map((one) => [one.productId, one.containers, one.cost.toString()])
          .toSorted(),
      )
    }
  })

  it('is saved as the tables its rows give, in the order shown', async () => {
    const sorting: Sorting = { key: 'racks', down: true }
    const { rows: text } = await region.rows({ view: view({}, sorting), version: '', from: 0, count: 1000 })
    const order = unpackShown(text).map((row) => row.siteId)
    const sorted = order.flatMap((id) => rows.find((row) => row.siteId === id) ?? [])
    const style = csvStyle('comma')
    const table = async (name: 'products' | 'months' | 'orders'): Promise<string> =>
      (
        await region.table({
          view: view({}, sorting),
          version: '',
          table: name,
          decimalSign: 'comma',
          until: UNTIL,
        })
      ).text
    expect(await table('products')).toBe(productsCsv(sorted, style))
    expect(await table('months')).toBe(monthsCsv(sorted, style))
    expect(await table('orders')).toBe(shoppingCsv(shoppingList(sorted, UNTIL), style))
  })

  it('stays of one piece for who scrolls it while a site changes', async () => {
    const before = await region.view({ view: view(), version: '', from: 0, count: 1000 })
    const names = unpackShown(before.rows).map((row) => row.name)
    const file = bigSite(2, 3, 1)
    const added = { ...file.site, name: 'AAA the first of all' }
    const path = join(root, 'sites', `${added.id}.json`)
    writeFileSync(path, encode('site', { ...file, site: added, products: [], instruments: [] }))
    const version = await whole()
    expect(version).not.toBe(before.version)
    const old = await region.rows({ view: view(), version: before.version, from: 0, count: 2 })
    expect([old.version, unpackShown(old.rows).map((row) => row.name)]).toEqual([
      before.version,
      names.slice(0, 2),
    ])
    const fresh = await region.view({ view: view(), version: '', from: 0, count: 2 })
    expect([fresh.version, fresh.total, unpackShown(fresh.rows)[0]?.name]).toEqual([
      version,
      SITES + 1,
      'AAA the first of all',
    ])
    rmSync(path)
    await whole()
  })
})
