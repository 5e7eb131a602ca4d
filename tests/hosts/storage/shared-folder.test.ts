import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Call } from '#core/contract/contract'
import { difference } from '#core/documents/changes'
import type { Site } from '#core/records/index'
import { good, listed, removeFolder, startProgram, tempFolder } from '../../contract/program'
import { siteWithClosedVisit, visit } from '../../contract/sample-site'
import { listing } from './files'

let root = ''
let shared = ''
const open: { readonly close: () => void }[] = []
beforeEach(() => {
  root = tempFolder()
  shared = join(root, 'shared')
  mkdirSync(shared)
})
afterEach(() => {
  for (const program of open.splice(0)) program.close()
  removeFolder(root)
})

/** One rep's machine, with the team's folder. */
const rep = (name: string): Call => {
  const { call, program } = startProgram(join(root, name), { shared: { folder: shared, ask: null } })
  open.push(program)
  return call
}
const siteOf = async (call: Call, id: string): Promise<Site> => (await good(call('site.open', { id }))).site
const edit = async (call: Call, id: string, change: (site: Site) => Site): Promise<void> => {
  const { site, revision: base } = await good(call('site.open', { id }))
  await good(call('site.edit', { id, base, changes: difference(site, change(site)) }))
}
const publish = async (call: Call, id: string): Promise<string> =>
  (await good(call('shared.publish', { id }))).file
const offered = async (call: Call) => (await good(call('shared.list', {}))).incoming

const rename =
  (name: string) =>
  (site: Site): Site => ({
    ...site,
    machines: site.machines.map((machine) => ({ ...machine, name })),
  })

describe('two reps with one site and a shared folder', () => {
  it('each take in what the other did, and end with the same site', async () => {
    const { site: made } = siteWithClosedVisit()
    const anna = rep('anna')
    const ben = rep('ben')
    await good(anna('site.create', { site: made }))
    const first = await publish(anna, made.id)
    expect(await offered(anna)).toEqual([])
    expect(await offered(ben)).toMatchObject([{ file: first, id: made.id, name: made.name, state: 'new' }])
    expect(await good(ben('shared.compare', { file: first }))).toMatchObject({ state: 'new', mine: null })
    await good(ben('shared.take', { file: first }))
    expect(await offered(ben)).toEqual([])

    const [pump] = made.machines[0]?.pumps ?? []
    const visitBy = (by: string) => visit(pump?.id ?? '', null, { by, startedAt: '2025-04-01T09:00:00.000Z' })
    await edit(anna, made.id, (site) => ({ ...site, visits: [...site.visits, visitBy('Anna')] }))
    await edit(ben, made.id, (site) => ({ ...site, visits: [...site.visits, visitBy('Ben')] }))
    await publish(anna, made.id)
    const theirs = await publish(ben, made.id)

    expect(await offered(anna)).toMatchObject([{ file: theirs, state: 'differs' }])
    const compared = await good(anna('shared.compare', { file: theirs }))
    expect(compared.differences.map(({ what, state, asks }) => [what, state, asks])).toEqual([
      ['open-visit', 'only-mine', false],
      ['open-visit', 'only-theirs', false],
    ])
    await good(anna('shared.take', { file: theirs, choice: 'merge' }))
    await good(ben('shared.take', { file: (await offered(ben))[0]?.file ?? '', choice: 'merge' }))
    expect(await siteOf(anna, made.id)).toEqual(await siteOf(ben, made.id))
    expect((await siteOf(ben, made.id)).visits.map(({ by }) => by).toSorted()).toEqual([
      'A. Rep',
      'Anna',
      'Ben',
    ])
    expect([await offered(anna), await offered(ben)]).toEqual([[], []])
  })

  it('are asked where both changed the set-up, and a copy of what gave way is kept', async () => {
    const { site: made } = siteWithClosedVisit()
    const anna = rep('anna')
    const ben = rep('ben')
    await good(anna('site.create', { site: made }))
    await good(ben('site.create', { site: made }))
    await edit(anna, made.id, rename('Bar'))
    await edit(ben, made.id, rename('Kitchen'))
    const file = await publish(ben, made.id)
    expect(await anna('shared.take', { file, choice: 'merge' })).toMatchObject({
      problem: { place: 'prefer' },
    })
    await good(anna('shared.take', { file, choice: 'merge', prefer: 'theirs' }))
    expect((await siteOf(anna, made.id)).machines[0]?.name).toBe('Kitchen')
    const { copies } = await good(anna('backups.list', { document: made.id }))
    await good(anna('backups.restore', { document: made.id, copy: copies[0]?.copy ?? '' }))
    expect((await siteOf(anna, made.id)).machines[0]?.name).toBe('Bar')
  })

  it('are not asked again about a file they have answered, until it changes', async () => {
    const { site: made } = siteWithClosedVisit()
    const anna = rep('anna')
    const ben = rep('ben')
    await good(anna('site.create', { site: made }))
    await good(ben('site.create', { site: { ...made, notes: 'other' } }))
    const file = await publish(ben, made.id)
    await good(anna('shared.take', { file, choice: 'keep-mine' }))
    expect(await offered(anna)).toEqual([])
    await edit(ben, made.id, (site) => ({ ...site, notes: 'and another' }))
    await publish(ben, made.id)
    expect(await offered(anna)).toMatchObject([{ file, state: 'differs' }])
  })
})

describe('a damaged site', () => {
  it('can be replaced by a colleague’s copy, and the damaged file stays', async () => {
    const { site: made } = siteWithClosedVisit()
    const anna = rep('anna')
    await good(anna('site.create', { site: made }))
    const file = await publish(anna, made.id)
    const folder = join(root, 'ben', 'sites')
    mkdirSync(folder, { recursive: true })
    writeFileSync(join(folder, `${made.id}.json`), 'garbage')
    const ben = rep('ben')
    expect(await listed(ben)).toMatchObject([{ state: 'damaged' }])
    await good(ben('shared.take', { file }))
    expect(await siteOf(ben, made.id)).toEqual(made)
    expect(readdirSync(join(root, 'ben', 'damaged'))).toHaveLength(1)
  })
})

describe('the shared folder', () => {
  it('holds one file per site and installation, whole, and nothing else of ours', async () => {
    const { site: made } = siteWithClosedVisit()
    const anna = rep('anna')
    await good(anna('site.create', { site: made }))
    const file = await publish(anna, made.id)
    await publish(anna, made.id)
    expect(readdirSync(shared)).toEqual([file])
    expect(JSON.parse(readFileSync(join(shared, file), 'utf8'))).toMatchObject({ format: 'dosewright-site' })
  })

  it('may hold anything else: foreign files are not looked at, damaged ones are named and stop nothing', async () => {
    const { site: made } = siteWithClosedVisit()
    const anna = rep('anna')
    const ben = rep('ben')
    await good(anna('site.create', { site: made }))
    const file = await publish(anna, made.id)
    const damaged = file.replace(made.id, '99999999-0000-4000-8000-000000000000')
    writeFileSync(join(shared, damaged), '{')
    for (const name of ['notes.txt', `${file}.tmp-1`, 'x--y.dosewright.json'])
      writeFileSync(join(shared, name), 'x')
    mkdirSync(join(shared, damaged.replace('99999999', '88888888')))
    const states = (await offered(ben)).map((row) => [row.file, row.state]).toSorted()
    expect(states).toEqual(
      [
        [file, 'new'],
        [damaged, 'unreadable'],
      ].toSorted(),
    )
    expect(await ben('shared.take', { file: damaged })).toMatchObject({
      problem: { code: 'document-not-json' },
    })
  })

  it('gives out no file outside itself', async () => {
    const anna = rep('anna')
    writeFileSync(join(root, 'secret.json'), '{}')
    for (const file of ['../secret.json', '/etc/passwd', 'secret.json', '', '..', 'a\u0000'])
      expect(await anna('shared.take', { file })).toMatchObject({ ok: false, problem: { code: 'not-found' } })
  })

  it('that has gone is said to have gone, and the program goes on', async () => {
    const { site: made } = siteWithClosedVisit()
    const anna = rep('anna')
    await good(anna('site.create', { site: made }))
    rmSync(shared, { recursive: true })
    expect(await anna('shared.list', {})).toMatchObject({ ok: false, problem: { code: 'unavailable' } })
    expect(await anna('shared.publish', { id: made.id })).toMatchObject({ problem: { code: 'unavailable' } })
    expect(await anna('sites.list', {})).toMatchObject({ ok: true })
  })

  it('cannot be chosen in a window that has no way to ask, and says how instead', async () => {
    expect(await rep('anna')('shared.choose', {})).toMatchObject({
      problem: { code: 'unavailable', what: expect.stringContaining('--shared') },
    })
  })
})

describe('a site that was removed', () => {
  it('is not brought back by a colleague’s copy: it is offered as removed, and comes with what it held here', async () => {
    const { site: made } = siteWithClosedVisit()
    const anna = rep('anna')
    const ben = rep('ben')
    await good(anna('site.create', { site: made }))
    const own = visit(made.machines[0]?.pumps[0]?.id ?? '', null, { by: 'Ben alone' })
    await good(ben('site.create', { site: { ...made, visits: [...made.visits, own] } }))
    await good(ben('site.remove', { id: made.id }))
    const file = await publish(anna, made.id)
    expect(await offered(ben)).toMatchObject([{ file, state: 'removed' }])
    expect(await good(ben('sites.list', {}))).toMatchObject({ sites: [] })
    await good(ben('site.restore', { id: made.id }))
    expect(await offered(ben)).toEqual([])
    expect((await siteOf(ben, made.id)).visits.map(({ by }) => by)).toContain('Ben alone')
  })

  it('stays removed when that is the answer, until the colleague changes something', async () => {
    const { site: made } = siteWithClosedVisit()
    const anna = rep('anna')
    const ben = rep('ben')
    await good(anna('site.create', { site: made }))
    await good(ben('site.create', { site: made }))
    await good(ben('site.remove', { id: made.id }))
    const file = await publish(anna, made.id)
    await good(ben('shared.take', { file, choice: 'keep-mine' }))
    expect(await offered(ben)).toEqual([])
    expect(await good(ben('sites.list', {}))).toMatchObject({ sites: [] })
    await edit(anna, made.id, (site) => ({ ...site, notes: 'changed since' }))
    await publish(anna, made.id)
    expect(await offered(ben)).toMatchObject([{ file, state: 'removed' }])
  })
})

describe('a sync service in between', () => {
  it('may add a second version under a longer name: what it holds is offered, also of one’s own copy', async () => {
    const { site: made } = siteWithClosedVisit()
    const anna = rep('anna')
    const ben = rep('ben')
    await good(anna('site.create', { site: made }))
    await good(ben('site.create', { site: made }))
    const annas = await publish(anna, made.id)
    const bens = await publish(ben, made.id)
    const [pump] = made.machines[0]?.pumps ?? []
    const held = async (by: string): Promise<string> => {
      const other = rep(`elsewhere ${by}`)
      const added = visit(pump?.id ?? '', null, { by })
      await good(other('site.create', { site: { ...made, visits: [...made.visits, added] } }))
      return (await good(other('site.export', { id: made.id }))).text
    }
    const names = [
      annas.replace('.json', ' (conflicted copy 2026-03-09).json'),
      annas.replace('.dosewright', '.sync-conflict-20260309-080000-ABC.dosewright'),
      bens.replace('.json', ' (1).json'),
      bens.replace('.dosewright.json', '.dosewright-OFFICE.json'),
    ]
    for (const name of names) writeFileSync(join(shared, name), await held(name))
    expect((await offered(ben)).map(({ file, state }) => [file, state]).toSorted()).toEqual(
      names.map((name) => [name, 'differs']).toSorted(),
    )
    for (const name of names) await good(ben('shared.take', { file: name, choice: 'merge' }))
    expect((await siteOf(ben, made.id)).visits.map(({ by }) => by)).toEqual(expect.arrayContaining(names))
    expect(await offered(ben)).toEqual([])
  })

  it('may show a file half first, take it away and bring it again: read when whole, not asked about twice', async () => {
    const { site: made } = siteWithClosedVisit()
    const anna = rep('anna')
    const ben = rep('ben')
    await good(anna('site.create', { site: made }))
    const file = await publish(anna, made.id)
    const path = join(shared, file)
    const whole = readFileSync(path)
    writeFileSync(path, whole.subarray(0, whole.length / 2))
    expect(await offered(ben)).toMatchObject([{ file, state: 'unreadable' }])
    writeFileSync(path, '')
    expect(await offered(ben)).toMatchObject([{ file, state: 'unreadable' }])
    writeFileSync(path, whole)
    expect(await offered(ben)).toMatchObject([{ file, state: 'new' }])
    await good(ben('shared.take', { file }))
    await edit(ben, made.id, (site) => ({ ...site, notes: 'more here' }))
    expect(await offered(ben)).toEqual([])
    rmSync(path)
    expect(await offered(ben)).toEqual([])
    expect(await ben('shared.take', { file })).toMatchObject({ problem: { code: 'not-found' } })
    writeFileSync(path, whole)
    utimesSync(path, new Date('2031-01-01'), new Date('2031-01-01'))
    expect(await offered(ben)).toEqual([])
  })

  it('between clocks years apart: the order of what was done does not come from the time of a file', async () => {
    const { site: made } = siteWithClosedVisit()
    const anna = rep('anna')
    const ben = rep('ben')
    await good(anna('site.create', { site: made }))
    await good(ben('site.create', { site: made }))
    const [pump] = made.machines[0]?.pumps ?? []
    const by = (name: string, startedAt: string) => visit(pump?.id ?? '', null, { by: name, startedAt })
    await edit(anna, made.id, (site) => ({
      ...site,
      visits: [...site.visits, by('Anna', '2025-04-02T09:00:00.000Z')],
    }))
    await edit(ben, made.id, (site) => ({
      ...site,
      visits: [...site.visits, by('Ben', '2025-04-01T09:00:00.000Z')],
    }))
    const annas = await publish(anna, made.id)
    const bens = await publish(ben, made.id)
    utimesSync(join(shared, annas), new Date('1980-01-01'), new Date('1980-01-01'))
    utimesSync(join(shared, bens), new Date('2099-01-01'), new Date('2099-01-01'))
    await good(anna('shared.take', { file: bens, choice: 'merge' }))
    await good(ben('shared.take', { file: annas, choice: 'merge' }))
    expect(await siteOf(anna, made.id)).toEqual(await siteOf(ben, made.id))
    expect((await siteOf(anna, made.id)).visits.map((one) => one.by)).toEqual(['A. Rep', 'Ben', 'Anna'])
  })
})

describe('an installation that was restored from an older copy of itself, or copied to a second computer', () => {
  it('is offered what it no longer holds, and publishing does not write over it', async () => {
    const { site: made } = siteWithClosedVisit()
    const anna = rep('anna')
    await good(anna('site.create', { site: made }))
    const file = await publish(anna, made.id)
    for (const program of open.splice(0)) program.close()
    cpSync(join(root, 'anna'), join(root, 'twin'), { recursive: true })

    const again = rep('anna')
    const [pump] = made.machines[0]?.pumps ?? []
    const later = visit(pump?.id ?? '', null, { by: 'after the copy' })
    await edit(again, made.id, (site) => ({ ...site, visits: [...site.visits, later] }))
    expect(await publish(again, made.id)).toBe(file)
    expect(await offered(again)).toEqual([])

    const twin = rep('twin')
    expect(await offered(twin)).toMatchObject([{ file, state: 'differs' }])
    await edit(twin, made.id, (site) => ({ ...site, notes: 'typed on the twin' }))
    await publish(twin, made.id)
    const [kept] = (await offered(twin)).map((row) => row.file)
    expect(kept).not.toBe(file)
    await good(twin('shared.take', { file: kept ?? '', choice: 'merge', prefer: 'mine' }))
    const { visits, notes } = await siteOf(twin, made.id)
    expect([visits.at(-1)?.by, notes]).toEqual(['after the copy', 'typed on the twin'])
  })
})

describe('an import that cannot be', () => {
  it('because both together would not hold, writes nothing at all', async () => {
    const { site: made, products } = siteWithClosedVisit()
    const anna = rep('anna')
    const ben = rep('ben')
    await good(ben('library.edit', { document: 'products', base: 0, changes: difference([], products) }))
    await good(anna('site.create', { site: made }))
    // the same pump under another machine: two machines with one pump once both are brought together
    const moved = made.machines.map((machine) => ({ ...machine, id: '77777777-0000-4000-8000-000000000000' }))
    await good(ben('site.create', { site: { ...made, machines: moved } }))
    const file = await publish(ben, made.id)
    const before = listing(join(root, 'anna'))
    expect(await anna('shared.take', { file, choice: 'merge', prefer: 'mine' })).toMatchObject({
      problem: { code: 'document-malformed', reason: 'belongs to another pump of this site' },
    })
    expect(listing(join(root, 'anna'))).toEqual(before)
  })
})
