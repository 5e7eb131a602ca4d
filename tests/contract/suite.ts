import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { contract, METHODS, type Call } from '#core/contract/contract'
import { difference } from '#core/documents/changes'
import { unpackShown } from '#core/documents/row-text'
import { NO_FILTER } from '#core/spend/portfolio-order'
import type { Site } from '#core/records/index'
import { good, listed } from './program'
import { instrument, newId, product, settings, site, siteWithClosedVisit, visit } from './sample-site'

/** A way to a running program on a fresh data folder. */
export interface Pipe {
  readonly call: Call
  /** the pipe with nothing known about the method or the shape of its input */
  readonly raw: (method: string, input: unknown) => Promise<unknown>
  readonly stop: () => Promise<void>
}

/** What every host must do, whichever pipe its calls come through. */
export function contractSuite(name: string, start: () => Promise<Pipe>): void {
  describe(`a program reached ${name}`, () => {
    let pipe: Pipe
    beforeEach(async () => {
      pipe = await start()
    })
    afterEach(() => pipe.stop())

    const create = async (made: Site): Promise<number> =>
      (await good(pipe.call('site.create', { site: made }))).revision
    const open = async (id: string): Promise<Site> => (await good(pipe.call('site.open', { id }))).site

    it('says what it is', async () => {
      expect(await good(pipe.call('host.describe', {}))).toMatchObject({
        kind: 'local-window',
        savesPdf: false,
      })
    })

    it('gives back the site it was given, part for part', async () => {
      const made = siteWithClosedVisit().site
      await create(made)
      expect(await open(made.id)).toEqual(made)
      const sites = await listed(pipe.call)
      expect(sites).toMatchObject([
        { state: 'good', id: made.id, name: made.name, machines: 1, pumps: 1, visits: 1, openVisitId: null },
      ])
    })

    it('saves an edit, and the next edit must know it', async () => {
      const made = site()
      const base = await create(made)
      const renamed = { ...made, name: 'Corner Cafe, back room' }
      const edited = await good(
        pipe.call('site.edit', { id: made.id, base, changes: difference(made, renamed) }),
      )
      expect(edited.revision).not.toBe(base)
      expect(await open(made.id)).toEqual(renamed)
      const other = { ...made, notes: 'from another window' }
      expect(await pipe.call('site.edit', { id: made.id, base, changes: difference(made, other) })).toEqual({
        ok: false,
        problem: { code: 'document-changed-elsewhere', document: renamed.name },
      })
      expect(await open(made.id)).toEqual(renamed)
    })

    it('lets one of two windows save when both edit the same version at the same moment', async () => {
      const made = site()
      const base = await create(made)
      const replies = await Promise.all(
        ['left', 'right'].map((notes) =>
          pipe.call('site.edit', { id: made.id, base, changes: difference(made, { ...made, notes }) }),
        ),
      )
      expect(replies.filter((reply) => reply.ok)).toHaveLength(1)
      const winner = replies.findIndex((reply) => reply.ok)
      expect((await open(made.id)).notes).toBe(['left', 'right'][winner])
    })

    it('refuses an edit whose result is no site any more, with the place, and keeps the old one', async () => {
      const made = site()
      const base = await create(made)
      const changes = [{ op: 'set', path: ['water', 'pH'], value: '7,4' }] as const
      expect(await pipe.call('site.edit', { id: made.id, base, changes })).toMatchObject({
        ok: false,
        problem: { code: 'document-malformed', place: 'water.pH' },
      })
      expect(await open(made.id)).toEqual(made)
    })

    it.each([
      ['a prototype member', ['__proto__', 'admin']],
      ['a place that is not there', ['machines', 99, 'name']],
      ['a list by name', ['machines', 'length']],
    ])('refuses an edit of %s', async (_what, path) => {
      const made = site()
      const base = await create(made)
      const changes = [{ op: 'set' as const, path, value: 'x' }]
      expect(await pipe.call('site.edit', { id: made.id, base, changes })).toMatchObject({
        ok: false,
        problem: { code: 'bad-request' },
      })
    })

    it('keeps a closed visit as it was signed, and takes an amendment', async () => {
      const made = siteWithClosedVisit().site
      const base = await create(made)
      const [closed] = made.visits
      if (closed === undefined) throw new Error('no visit')
      const attempts: readonly Site[] = [
        { ...made, visits: [] },
        { ...made, visits: [{ ...closed, notes: 'different' }] },
        { ...made, visits: [{ ...closed, closing: null }] },
        { ...made, snapshots: [] },
        { ...made, snapshots: made.snapshots.map((setup) => ({ ...setup, machines: [] })) },
      ]
      for (const attempt of attempts)
        expect(
          await pipe.call('site.edit', { id: made.id, base, changes: difference(made, attempt) }),
        ).toEqual({ ok: false, problem: { code: 'visit-closed', visitId: closed.id } })
      const amendment = {
        id: newId(),
        at: '2025-03-02T08:00:00.000Z',
        by: 'A. Rep',
        reason: 'typo',
        text: 'x',
      }
      const amended = { ...made, visits: [{ ...closed, amendments: [amendment] }] }
      const saved = await good(
        pipe.call('site.edit', { id: made.id, base, changes: difference(made, amended) }),
      )
      const taken = { ...made, visits: [{ ...closed, amendments: [] }] }
      expect(
        await pipe.call('site.edit', {
          id: made.id,
          base: saved.revision,
          changes: difference(amended, taken),
        }),
      ).toMatchObject({ ok: false, problem: { code: 'visit-closed' } })
    })

    it('keeps closed visits while open ones, machines and notes go on changing around them', async () => {
      const made = siteWithClosedVisit().site
      const base = await create(made)
      const [pump] = made.machines[0]?.pumps ?? []
      const next: Site = {
        ...made,
        notes: 'new',
        machines: [],
        visits: [visit(pump?.id ?? '', null), ...made.visits],
      }
      await good(pipe.call('site.edit', { id: made.id, base, changes: difference(made, next) }))
      expect(await open(made.id)).toEqual(next)
    })

    it('takes a removed site off the list and brings it back whole', async () => {
      const made = site()
      await create(made)
      await good(pipe.call('site.remove', { id: made.id }))
      expect(await good(pipe.call('sites.list', {}))).toEqual({ sites: [], waiting: 0 })
      expect(await pipe.call('site.open', { id: made.id })).toMatchObject({ problem: { code: 'not-found' } })
      expect(await good(pipe.call('sites.removed', {}))).toMatchObject({
        sites: [{ id: made.id, name: made.name }],
      })
      await good(pipe.call('site.restore', { id: made.id }))
      expect(await open(made.id)).toEqual(made)
      expect(await pipe.call('site.restore', { id: made.id })).toMatchObject({
        problem: { code: 'already-there', what: made.name },
      })
    })

    it('exports a removed site without bringing it back, as it would come back', async () => {
      const { site: made, products } = siteWithClosedVisit()
      await create(made)
      const library = await good(pipe.call('library.open', {}))
      await good(
        pipe.call('library.edit', {
          document: 'products',
          base: library.revisions.products,
          changes: difference([], products),
        }),
      )
      const { text } = await good(pipe.call('site.export', { id: made.id }))
      expect(await pipe.call('site.exportRemoved', { id: made.id })).toMatchObject({
        problem: { code: 'not-found' },
      })
      await good(pipe.call('site.remove', { id: made.id }))
      expect((await good(pipe.call('site.exportRemoved', { id: made.id }))).text).toBe(text)
      expect(await good(pipe.call('sites.list', {}))).toEqual({ sites: [], waiting: 0 })
      expect((await good(pipe.call('sites.removed', {}))).sites).toHaveLength(1)
    })

    it('gives the settings as a document, and reads such a document without changing anything', async () => {
      const { text } = await good(pipe.call('settings.export', {}))
      const here = (await good(pipe.call('library.open', {}))).settings
      expect(await good(pipe.call('settings.read', { text }))).toEqual({ settings: here })
      const theirs = text.replace(/"repName": "[^"]*"/u, '"repName": "B. Rep"')
      expect(await good(pipe.call('settings.read', { text: theirs }))).toEqual({
        settings: { ...here, repName: 'B. Rep' },
      })
      expect((await good(pipe.call('library.open', {}))).settings).toEqual(here)
      for (const [wrong, code] of [
        ['', 'document-not-json'],
        ['{"format": "dosewright-site"}', 'document-foreign'],
        [text.replace('"version": 1', '"version": 2'), 'document-newer'],
        [text.replace('"repName"', '"surprise"'), 'document-malformed'],
      ] as const)
        expect(await pipe.call('settings.read', { text: wrong })).toMatchObject({ problem: { code } })
    })

    it('exports a site with the products and instruments it uses, and reads it back elsewhere', async () => {
      const { site: made, products, instruments } = siteWithClosedVisit()
      const unused = product({ name: 'Not used here' })
      await create(made)
      const library = await good(pipe.call('library.open', {}))
      await good(
        pipe.call('library.edit', {
          document: 'products',
          base: library.revisions.products,
          changes: difference([], [...products, unused]),
        }),
      )
      await good(
        pipe.call('library.edit', {
          document: 'instruments',
          base: library.revisions.instruments,
          changes: difference([], instruments),
        }),
      )
      const { fileName, text } = await good(pipe.call('site.export', { id: made.id }))
      expect(fileName).toBe('Corner Cafe.dosewright.json')
      const file = JSON.parse(text) as { readonly products: unknown; readonly instruments: unknown }
      expect(file.products).toEqual(products)
      expect(file.instruments).toEqual(instruments)

      expect(await pipe.call('site.import', { text })).toEqual({
        ok: false,
        problem: { code: 'already-there', what: made.name },
      })
      const elsewhere = await start()
      try {
        expect(await good(elsewhere.call('site.compare', { text }))).toMatchObject({
          state: 'new',
          mine: null,
          products: 1,
          instruments: 1,
        })
        expect(await good(elsewhere.call('site.import', { text }))).toEqual({
          id: made.id,
          name: made.name,
          products: 1,
          instruments: 1,
        })
        expect((await good(elsewhere.call('site.open', { id: made.id }))).site).toEqual(made)
        expect((await good(elsewhere.call('library.open', {}))).products).toEqual(products)
      } finally {
        await elsewhere.stop()
      }
    })

    it('gives the choice when a site comes in that is here already', async () => {
      const { site: made } = siteWithClosedVisit()
      const base = await create(made)
      const { text } = await good(pipe.call('site.export', { id: made.id }))
      expect(await good(pipe.call('site.compare', { text }))).toMatchObject({
        state: 'same',
        differences: [],
      })
      const mine = { ...made, notes: 'mine', stock: [] }
      await good(pipe.call('site.edit', { id: made.id, base, changes: difference(made, mine) }))

      const compared = await good(pipe.call('site.compare', { text }))
      expect(compared).toMatchObject({ state: 'differs' })
      expect(compared.differences).toEqual([
        { place: 'notes', what: 'site', name: 'notes', state: 'differs', changed: [], asks: true },
      ])
      await good(pipe.call('site.import', { text, choice: 'keep-mine' }))
      expect(await open(made.id)).toEqual(mine)
      expect(await pipe.call('site.import', { text, choice: 'merge' })).toMatchObject({
        ok: false,
        problem: { code: 'bad-request', place: 'prefer' },
      })
      const both = await good(pipe.call('site.import', { text, choice: 'keep-both' }))
      expect(both.id).not.toBe(made.id)
      expect(await open(both.id)).toEqual({ ...made, id: both.id, name: 'Corner Cafe (copy)' })
      await good(pipe.call('site.import', { text, choice: 'take-theirs' }))
      expect(await open(made.id)).toEqual(made)

      const { copies } = await good(pipe.call('backups.list', { document: made.id }))
      const [newest] = copies
      if (newest === undefined) throw new Error('no copy was taken')
      expect(
        await good(pipe.call('backups.preview', { document: made.id, copy: newest.copy })),
      ).toMatchObject({ differences: [{ place: 'notes', state: 'differs' }] })
      await good(pipe.call('backups.restore', { document: made.id, copy: newest.copy }))
      expect((await open(made.id)).notes).toBe('mine')
    })

    it('refuses a file that does not hold, names the place, and writes nothing', async () => {
      for (const [text, code] of [
        ['', 'document-not-json'],
        ['{"type":"FeatureCollection"}', 'document-foreign'],
        ['{"format":"dosewright-site","version":7}', 'document-newer'],
        ['{"format":"dosewright-site","version":1}', 'document-malformed'],
        [`${'['.repeat(100_000)}`, 'document-malformed'],
      ] as const)
        expect(await pipe.call('site.import', { text })).toMatchObject({ ok: false, problem: { code } })
      expect(await good(pipe.call('sites.list', {}))).toEqual({ sites: [], waiting: 0 })
    })

    it('starts with an empty library and settings that work', async () => {
      const library = await good(pipe.call('library.open', {}))
      expect(library).toMatchObject({ products: [], instruments: [], settings: { theme: 'system' } })
      const edits = [
        ['products', [], [product()]],
        ['instruments', [], [instrument()]],
        ['settings', library.settings, settings],
      ] as const
      for (const [document, before, after] of edits) {
        const base = library.revisions[document]
        await good(pipe.call('library.edit', { document, base, changes: difference(before, after) }))
        expect((await good(pipe.call('library.open', {})))[document]).toEqual(after)
        expect(
          await pipe.call('library.edit', { document, base, changes: difference(before, after) }),
        ).toMatchObject({ ok: false, problem: { code: 'document-changed-elsewhere' } })
      }
    })

    it('adds the demo sites once, with their last visit a few days ago', async () => {
      const { ids } = await good(pipe.call('demo.add', {}))
      expect(ids.length).toBeGreaterThanOrEqual(4)
      const sites = await listed(pipe.call)
      const newest = sites
        .map((row) => (row.state === 'good' ? (row.lastVisitAt ?? '') : ''))
        .toSorted()
        .at(-1)
      const days = (Date.now() - Date.parse(newest ?? '')) / 86_400_000
      expect(days).toBeGreaterThan(1)
      expect(days).toBeLessThan(5)
      const [one] = ids
      if (one === undefined) throw new Error('no demo site')
      const { site: before, revision: base } = await good(pipe.call('site.open', { id: one }))
      const changes = difference(before, { ...before, notes: 'changed by me' })
      await good(pipe.call('site.edit', { id: one, base, changes }))
      await good(pipe.call('demo.add', {}))
      expect((await open(one)).notes).toBe('changed by me')
      expect(await listed(pipe.call)).toHaveLength(ids.length)
    })

    it('works out the portfolio, answers a view of it in slices, and takes an edit in', async () => {
      await good(pipe.call('demo.add', {}))
      const version = await portfolioDone(pipe.call)
      const all = await good(
        pipe.call('portfolio.view', { ...PORTFOLIO_BY_NAME, version, from: 0, count: 9 }),
      )
      const rows = unpackShown(all.rows)
      expect([all.total, all.known, rows.length]).toEqual([5, 5, 5])
      const slice = await good(
        pipe.call('portfolio.rows', { ...PORTFOLIO_BY_NAME, version, from: 3, count: 9 }),
      )
      expect(unpackShown(slice.rows)).toEqual(rows.slice(3))
      const [first] = rows
      const id = first?.siteId ?? ''
      const { site: before, revision: base } = await good(pipe.call('site.open', { id }))
      const changes = difference(before, { ...before, name: 'AAA renamed meanwhile' })
      await good(pipe.call('site.edit', { id, base, changes }))
      const later = await portfolioDone(pipe.call)
      expect(later).not.toBe(version)
      const after = await good(
        pipe.call('portfolio.view', { ...PORTFOLIO_BY_NAME, version: later, from: 0, count: 1 }),
      )
      expect(unpackShown(after.rows).map((row) => row.name)).toEqual(['AAA renamed meanwhile'])
      expect(await good(pipe.call('portfolio.stop', {}))).toEqual({ stopped: true })
    })

    it('finds sites by their names and gives the list in slices, with the signs of each', async () => {
      await good(pipe.call('demo.add', {}))
      await listed(pipe.call)
      const ask = { words: '', locale: 'en', version: '', from: 0, count: 100 }
      const all = await good(pipe.call('sites.view', ask))
      expect(all).toMatchObject({ sites: 5, readable: 5, waiting: 0, total: 5 })
      const slice = await good(pipe.call('sites.view', { ...ask, version: all.version, from: 2, count: 2 }))
      expect(slice.rows).toEqual(all.rows.slice(2, 4))
      const [some] = all.rows
      const name = some?.state === 'good' ? some.name : ''
      const found = await good(pipe.call('sites.view', { ...ask, words: name.toUpperCase() }))
      expect(found).toMatchObject({ total: 1, rows: [{ name }] })
      expect(await good(pipe.call('sites.view', { ...ask, locale: 'no such language!' }))).toMatchObject({
        total: 5,
      })
      const ids = [...all.rows.map((row) => row.id), newId()]
      const { outlooks } = await good(pipe.call('sites.outlooks', { ids }))
      expect(outlooks.map((one) => one.id).toSorted()).toEqual(ids.slice(0, 5).toSorted())
    })

    it('can be told to stop reading when nothing is being read', async () => {
      const made = site()
      await create(made)
      await good(pipe.call('site.stopReading', {}))
      expect(await open(made.id)).toEqual(made)
    })

    it('adds the portfolio up and writes it as tables', async () => {
      await good(pipe.call('demo.add', {}))
      const version = await portfolioDone(pipe.call)
      const ask = { ...PORTFOLIO_BY_NAME, version, until: '2199-12-31' }
      const { totals } = await good(
        pipe.call('portfolio.view', { ...PORTFOLIO_BY_NAME, version, from: 0, count: 1 }),
      )
      const sums = await good(pipe.call('portfolio.sums', ask))
      expect(sums.months.map((one) => one.currency).toSorted()).toEqual(
        totals.map((one) => one.currency).toSorted(),
      )
      for (const total of totals) {
        const own = sums.products.filter((product) => product.currency === total.currency)
        const cents = own.reduce((sum, product) => sum + Math.round(Number(product.cost) * 100), 0)
        expect(cents).toBe(Math.round(Number(total.cost) * 100))
      }
      const [group] = sums.orders
      if (group === undefined) throw new Error('the demo sites have nothing to order')
      const { productId, containerLitres, currency } = group
      const { lines } = await good(
        pipe.call('portfolio.orders', {
          ...ask,
          group: { productId, containerLitres, currency },
          most: 1000,
        }),
      )
      expect(lines.length).toBe(group.sites)
      expect(lines.reduce((sum, line) => sum + line.containers, 0)).toBe(group.containers)
      const { text } = await good(
        pipe.call('portfolio.table', { ...ask, table: 'sites', decimalSign: 'point' }),
      )
      expect(text.trim().split('\r\n')).toHaveLength(6)
    })

    it('says that it cannot save a PDF itself, and what does', async () => {
      expect(await pipe.call('report.savePdf', { title: 'Report', sheet: 'A4' })).toMatchObject({
        ok: false,
        problem: { code: 'unavailable' },
      })
    })

    it('answers a call for a site that is not there with not-found, for every method that names one', async () => {
      const id = newId()
      for (const method of [
        'site.open',
        'site.remove',
        'site.restore',
        'site.recover',
        'site.export',
        'site.exportRemoved',
      ] as const)
        expect([method, await pipe.call(method, { id })]).toMatchObject([
          method,
          { ok: false, problem: { code: 'not-found' } },
        ])
    })

    it('refuses a method it does not have', async () => {
      for (const method of ['site.guess', '__proto__', 'constructor', 'toString', ''])
        expect([method, await pipe.raw(method, {})]).toMatchObject([method, { ok: false }])
    })

    it.each(METHODS)('%s refuses an input that is not its own', async (method) => {
      for (const input of [null, undefined, [], 'x', 7, { surprise: true }]) {
        if (contract[method].input.safeParse(input).success) continue
        expect(await pipe.raw(method, input)).toMatchObject({ ok: false, problem: { code: 'bad-request' } })
      }
    })

    it('keeps names made to hurt as the plain text they are', async () => {
      const names = [
        '../../etc/passwd',
        'CON',
        '\u202Egnp.exe',
        'a\u0000b',
        '😀'.repeat(50),
        '<img onerror=x>',
        ' ',
      ]
      for (const name of names) {
        const made = site({ name })
        await create(made)
        expect((await open(made.id)).name).toBe(name)
        const { fileName } = await good(pipe.call('site.export', { id: made.id }))
        expect(fileName).toMatch(/^[^/\\:*?"<>|\p{Cc}\p{Cf}]+\.dosewright\.json$/u)
        expect(fileName).not.toMatch(/^(?:con|\.)/i)
      }
      expect(await listed(pipe.call)).toHaveLength(names.length)
    })
  })
}

const PORTFOLIO_BY_NAME = {
  view: { filter: NO_FILTER, sorting: { key: 'name', down: false }, locale: 'en' },
} as const

/** A round of the portfolio to its end: the version it then has. */
async function portfolioDone(call: Call): Promise<string> {
  for (let begin = true; ; begin = false) {
    const { running, version } = await good(call('portfolio.progress', { begin }))
    if (!running) return version
    await new Promise((go) => setTimeout(go, 2))
  }
}
