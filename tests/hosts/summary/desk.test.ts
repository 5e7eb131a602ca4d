import { readFileSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { DEFAULT_SETTINGS } from '#core/documents/default-settings'
import { encode } from '#core/documents/encode'
import { unpackRow } from '#core/documents/row-text'
import type { PortfolioRow } from '#core/spend/portfolio'
import { siteRow, type Library } from '#core/worksheet/site-row'
import { prepareDataFolder } from '#main/storage/data-folder'
import { dayIn } from '#main/summary/day-in'
import { SummaryDesk, type NotedSite } from '#main/summary/desk'
import { bigSite } from '../../bench/big-site'
import { removeFolder, tempFolder } from '../../contract/program'

const files = [1, 2, 3].map((seed) => {
  const file = bigSite(2, 3, seed)
  return { ...file, site: { ...file.site, name: `Site ${'abc'[seed - 1] ?? ''}` } }
})
const library: Library = {
  products: files.flatMap((file) => file.products),
  instruments: files.flatMap((file) => file.instruments),
  settings: DEFAULT_SETTINGS,
}
const [first, second, third] = files.map((file) => file.site)
if (first === undefined || second === undefined || third === undefined) throw new Error('three sites')

let root: string
let now = '2026-05-04T12:00:00.000Z'
const desks: SummaryDesk[] = []
beforeEach(() => {
  root = tempFolder()
  now = '2026-05-04T12:00:00.000Z'
  prepareDataFolder(root)
  for (const { site } of files) put(site)
})
afterEach(() => {
  for (const desk of desks.splice(0)) desk.close()
  removeFolder(root)
})

const at = (site: { readonly id: string }): string => join(root, 'sites', `${site.id}.json`)
const put = (site: typeof first): void => {
  const [file] = files
  if (file !== undefined)
    writeFileSync(at(site), encode('site', { ...file, site, products: [], instruments: [] }))
}
const index = (): string => join(root, 'index', 'sites.txt')
const desk = (program = 'one', patience = 60_000): SummaryDesk => {
  const made = new SummaryDesk({ root, program, now: () => now, patience })
  desks.push(made)
  return made
}

/** What the list says, by name of the site. */
async function names(of: SummaryDesk): Promise<readonly string[]> {
  const { sites } = await of.list()
  return (JSON.parse(sites) as readonly (readonly [string, NotedSite])[])
    .map(([, site]) => site.name)
    .toSorted()
}

interface Found {
  readonly rows: ReadonlyMap<string, PortfolioRow>
  /** rows there were before anything was worked out */
  readonly atOnce: number
  /** sites that were to be worked out */
  readonly work: number
}

/** A whole round, as the window asks for it. */
async function round(of: SummaryDesk, lib = library): Promise<Found> {
  const rows = new Map<string, PortfolioRow>()
  let atOnce = -1
  let work = -1
  let since = 0
  let run = ''
  for (let begin = true; ; begin = false) {
    const page = await of.rows({ begin, run, since }, begin ? lib : null)
    if (begin) work = page.progress.left
    for (const id of page.gone) rows.delete(id)
    for (const text of page.rows) {
      const row = unpackRow(text)
      rows.set(row.siteId, row)
    }
    if (atOnce < 0) atOnce = rows.size
    since = page.since
    run = page.run
    if (!page.more && !page.progress.running) return { rows, atOnce, work }
    await new Promise((go) => setTimeout(go, 1))
  }
}

/** The row as it is worked out from the record itself, without any index. */
const worked = (site: typeof first, lib = library): PortfolioRow => {
  const dayOf = (instant: string): string => dayIn(instant, site.timeZone)
  return siteRow(site, lib, dayOf(now), dayOf)
}
const plain = (row: PortfolioRow | undefined): unknown => JSON.parse(JSON.stringify(row ?? null))

describe('the index of all sites', () => {
  it('gives every site the row that is worked out from its file', async () => {
    const { rows, atOnce, work } = await round(desk())
    expect([atOnce, work]).toEqual([0, 3])
    for (const { site } of files) expect(plain(rows.get(site.id))).toEqual(plain(worked(site)))
  })

  it('is there after a restart: nothing is worked out again', async () => {
    await round(desk())
    const { rows, atOnce, work } = await round(desk())
    expect([atOnce, work]).toEqual([3, 0])
    for (const { site } of files) expect(plain(rows.get(site.id))).toEqual(plain(worked(site)))
    expect(statSync(index()).mode & 0o777).toBe(0o600)
  })

  it('never shows the row of a file that has changed since, whoever changed it', async () => {
    await round(desk())
    const cheaper = { ...first, currency: 'USD' }
    put(cheaper)
    const { rows, atOnce, work } = await round(desk())
    expect([atOnce, work]).toEqual([2, 1])
    expect(plain(rows.get(first.id))).toEqual(plain(worked(cheaper)))
  })

  it('notices a change of the same size whose time was set back by hand', async () => {
    const { atime, mtime } = statSync(at(first))
    await names(desk())
    const text = readFileSync(at(first), 'utf8')
    writeFileSync(at(first), text.replace(first.name, [...first.name].toReversed().join('')))
    utimesSync(at(first), atime, mtime)
    expect(await names(desk())).toContain([...first.name].toReversed().join(''))
  })

  it('takes back in a running program what no longer holds, before the new row is there', async () => {
    const one = desk()
    await round(one)
    const { run, since } = await one.rows({ begin: false, run: '', since: 0 }, null)
    put({ ...first, name: 'Renamed outside' })
    rmSync(at(second))
    const page = await one.rows({ begin: true, run, since }, library)
    expect(page.gone.toSorted()).toEqual([first.id, second.id].toSorted())
    expect([page.rows, page.progress.left, page.progress.sites]).toEqual([[], 1, 2])
    expect((await round(one)).rows.get(first.id)?.name).toBe('Renamed outside')
    expect(await names(one)).not.toContain(second.name)
  })

  it('works out only the sites that name a product whose price has changed', async () => {
    await round(desk())
    const [changed] = files[1]?.products ?? []
    const products = library.products.map((one) =>
      one.id === changed?.id
        ? { ...one, prices: one.prices.map((price) => ({ ...price, price: '99.00' })) }
        : one,
    )
    const { rows, atOnce, work } = await round(desk(), { ...library, products })
    expect([atOnce, work]).toEqual([2, 1])
    expect(plain(rows.get(second.id))).toEqual(plain(worked(second, { ...library, products })))
    expect(rows.get(second.id)?.cost.equals(worked(second).cost)).toBe(false)
  })

  it('shows yesterday’s rows as yesterday’s and works out today’s', async () => {
    await round(desk())
    now = '2026-05-05T12:00:00.000Z'
    const one = desk()
    const page = await one.rows({ begin: true, run: '', since: 0 }, library)
    expect(page.rows.map((text) => unpackRow(text).asOf)).toEqual(['2026-05-04', '2026-05-04', '2026-05-04'])
    expect(page.progress.left).toBe(3)
    const { rows } = await round(one)
    for (const { site } of files) expect(plain(rows.get(site.id))).toEqual(plain(worked(site)))
    expect([...rows.values()].map((row) => row.asOf)).toEqual(['2026-05-05', '2026-05-05', '2026-05-05'])
  })

  it('stops when asked, keeps what was worked out, and goes on from there the next time', async () => {
    const one = desk()
    await one.rows({ begin: true, run: '', since: 0 }, library)
    await one.stop()
    const page = await one.rows({ begin: false, run: '', since: 0 }, null)
    expect([page.progress.left, page.progress.running]).toEqual([0, false])
    expect((await round(one)).rows.size).toBe(3)
  })

  it('says which files cannot be read, leaves them untouched, and takes them in once they can', async () => {
    const whole = readFileSync(at(third), 'utf8')
    writeFileSync(at(third), whole.slice(0, -200))
    const one = desk()
    expect((await round(one)).rows.size).toBe(2)
    const page = await one.rows({ begin: false, run: '', since: 0 }, null)
    expect([page.progress.unread, page.progress.unreadSites]).toEqual([1, [{ id: third.id, newer: false }]])
    expect(readFileSync(at(third), 'utf8')).toBe(whole.slice(0, -200))
    writeFileSync(at(third), whole)
    expect((await round(one)).rows.size).toBe(3)
  })

  it('says which files nobody has looked into yet when there are more than it waits for', async () => {
    const one = desk('one', -1)
    const listing = await one.list()
    expect([JSON.parse(listing.sites), listing.waiting.length]).toEqual([[], 3])
    for (let i = 0; i < 2_000 && (await one.list()).waiting.length > 0; i += 1)
      await new Promise((go) => setTimeout(go, 10))
    expect((await names(one)).length).toBe(3)
  })
})

describe('a damaged index', () => {
  const damages: readonly (readonly [string, (text: string) => string | null])[] = [
    ['gone', () => null],
    ['empty', () => ''],
    ['cut off in the middle of a line', (text) => text.slice(0, -700)],
    ['with one digit changed', (text) => text.replace(/"cost":"\d/u, '"cost":"9')],
    ['with a line missing its end', (text) => text.trimEnd()],
    ['with rubbish between the lines', (text) => text.replaceAll('\n', '\n\u0000rubbish\n')],
    [
      'of the version before, whose tubes know nothing of the visits',
      (text) => text.replace(/^dosewright-index 4 /u, 'dosewright-index 3 '),
    ],
    ['of a later version', (text) => text.replace(/^dosewright-index 4 /u, 'dosewright-index 5 ')],
    ['that is another file', () => '{"format":"dosewright-site"}'],
    ['with the lines of two sites exchanged', (text) => text.split('\n').toReversed().join('\n')],
  ]
  it.each(damages)('%s never gives a wrong row, and is whole again afterwards', async (_what, damage) => {
    await round(desk())
    const damaged = damage(readFileSync(index(), 'utf8'))
    if (damaged === null) rmSync(index())
    else writeFileSync(index(), damaged)
    const { rows } = await round(desk())
    for (const { site } of files) expect(plain(rows.get(site.id))).toEqual(plain(worked(site)))
    expect((await round(desk())).work).toBe(0)
  })

  it('of another program is not taken over: its figures may have been worked out another way', async () => {
    await round(desk('one'))
    expect((await round(desk('two'))).atOnce).toBe(0)
  })

  it('that cannot be written changes nothing for the person', async () => {
    rmSync(join(root, 'index'), { recursive: true })
    writeFileSync(join(root, 'index'), 'in the way')
    expect((await round(desk())).rows.size).toBe(3)
  })

  it('does not grow without end while a site is edited', async () => {
    const one = desk()
    await round(one)
    for (let edit = 0; edit < 1200; edit += 1) {
      put({ ...first, notes: `edit ${edit}` })
      await one.list()
    }
    expect(readFileSync(index(), 'utf8').split('\n').length).toBeLessThan(600)
    expect((await round(desk())).rows.size).toBe(3)
  }, 60_000)
})
