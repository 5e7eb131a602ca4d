import { readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { decode } from '#core/documents/decode'
import { DEFAULT_SETTINGS } from '#core/documents/default-settings'
import { siteFacts } from '#core/documents/site-facts'
import { encode } from '#core/documents/encode'
import type { SiteFile } from '#core/documents/site-schema'
import type { Site } from '#core/records/index'
import { computeWorksheet } from '#core/worksheet/compute'
import { outlookOf } from '#core/worksheet/site-outlook'
import type { Library } from '#core/worksheet/site-row'
import { prepareDataFolder } from '#main/storage/data-folder'
import { dayIn } from '#main/summary/day-in'
import { SummaryDesk } from '#main/summary/desk'
import { signsOf } from '#renderer/state/site-outlook.ts'
import { writeManySites } from '../../bench/many-sites'
import { ASSETS, removeFolder, tempFolder } from '../../contract/program'
import { good } from '../../support/outcomes'

const NOW = '2026-11-25T12:00:00.000Z'
const TODAY = '2026-11-25'
const SITES = 26

let root: string
let library: Library
let sites: readonly Site[]
const desks: SummaryDesk[] = []
const desk = (now = NOW): SummaryDesk => {
  const made = new SummaryDesk({ root, program: 'one', now: () => now })
  desks.push(made)
  return made
}
const path = (site: Site): string => join(root, 'sites', `${site.id}.json`)
const put = (file: SiteFile): void =>
  writeFileSync(path(file.site), encode('site', { ...file, products: [], instruments: [] }))

/** The signs as the site file itself gives them. */
function fromFile(site: Site): readonly unknown[] {
  const { site: read } = good(decode('site', readFileSync(path(site), 'utf8'))).document
  const worksheet = computeWorksheet({ site: read, ...library, asOf: TODAY })
  const outlook = outlookOf(read, worksheet, (at) => dayIn(at, read.timeZone))
  return signsOf(siteFacts(read), outlook, TODAY)
}

/** The signs by site as the index has them. */
async function fromIndex(of: SummaryDesk): Promise<ReadonlyMap<string, readonly unknown[]>> {
  const ids = sites.map((site) => site.id)
  const facts = new Map(sites.map((site) => [site.id, siteFacts(site)]))
  const found = await of.outlooks(ids, library)
  return new Map(
    found.flatMap(({ id, outlook }) => {
      const known = facts.get(id)
      return known === undefined ? [] : [[id, signsOf(known, outlook, TODAY)] as const]
    }),
  )
}
const fromFiles = (): ReadonlyMap<string, readonly unknown[]> =>
  new Map(sites.map((site) => [site.id, fromFile(site)]))

beforeAll(() => {
  root = tempFolder()
  prepareDataFolder(root)
  writeManySites(root, SITES)
  const read = (name: string): string => readFileSync(join(root, name), 'utf8')
  const demos = readdirSync(join(ASSETS, 'demo'))
    .filter((name) => name.endsWith('.json'))
    .map((name) => good(decode('site', readFileSync(join(ASSETS, 'demo', name), 'utf8'))).document)
  for (const demo of demos) put(demo)
  library = {
    products: [
      ...good(decode('products', read('library/products.json'))).document.products,
      ...demos.flatMap((demo) => demo.products),
    ],
    instruments: [
      ...good(decode('instruments', read('library/instruments.json'))).document.instruments,
      ...demos.flatMap((demo) => demo.instruments),
    ],
    settings: DEFAULT_SETTINGS,
  }
  sites = readdirSync(join(root, 'sites'))
    .filter((name) => !name.includes('last-good'))
    .map((name) => good(decode('site', read(`sites/${name}`))).document.site)
})
afterEach(() => {
  for (const made of desks.splice(0)) made.close()
})
afterAll(() => removeFolder(root))

describe('the signs of a list', () => {
  it('are those the site files give, worked out now and read from the index later', async () => {
    expect(sites.length).toBeGreaterThan(SITES)
    const wanted = fromFiles()
    expect(new Set([...wanted.values()].map((signs) => JSON.stringify(signs))).size).toBeGreaterThan(4)
    expect(await fromIndex(desk())).toEqual(wanted)
    const before = statSync(join(root, 'index', 'sites.txt')).mtimeMs
    expect(await fromIndex(desk())).toEqual(wanted)
    // nothing was worked out again
    expect(statSync(join(root, 'index', 'sites.txt')).mtimeMs).toBe(before)
  })

  it('hold on a later day than they were noted on', async () => {
    await fromIndex(desk('2026-06-01T12:00:00.000Z'))
    expect(await fromIndex(desk())).toEqual(fromFiles())
  })

  it('follow a change of a site at once', async () => {
    await fromIndex(desk())
    const [first] = sites
    if (first === undefined) throw new Error('no site')
    const whole = readFileSync(path(first), 'utf8')
    const file = good(decode('site', whole)).document
    put({ ...file, site: { ...first, visits: first.visits.slice(0, 3) } })
    const one = desk()
    const [found] = await one.outlooks([first.id], library)
    const facts = siteFacts(good(decode('site', readFileSync(path(first), 'utf8'))).document.site)
    const wanted = fromFile(first)
    expect(found && signsOf(facts, found.outlook, TODAY)).toEqual(wanted)
    writeFileSync(path(first), whole)
  })

  it('are left out for a site that cannot be read, and for one that is gone', async () => {
    const [first, second, third] = sites
    if (first === undefined || second === undefined || third === undefined) throw new Error('no sites')
    const kept = [first, second].map((site) => readFileSync(path(site), 'utf8'))
    writeFileSync(path(first), 'not a site')
    rmSync(path(second))
    const found = await desk().outlooks([first.id, second.id, third.id], library)
    expect(found.map(({ id }) => id)).toEqual([third.id])
    for (const [at, site] of [first, second].entries()) writeFileSync(path(site), kept[at] ?? '')
  })
})
