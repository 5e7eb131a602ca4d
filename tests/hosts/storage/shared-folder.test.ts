import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Call } from '#core/contract/contract'
import { difference } from '#core/documents/changes'
import type { Site } from '#core/records/index'
import { good, listed, removeFolder, startProgram, tempFolder } from '../../contract/program'
import { siteWithClosedVisit, visit } from '../../contract/sample-site'

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
