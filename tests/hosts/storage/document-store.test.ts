import {
  existsSync,
  readFileSync,
  readdirSync,
  rmSync,
  statSync,
  truncateSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { fail } from '#core/outcome'
import type { Site } from '#core/records/index'
import { encode } from '#core/documents/encode'
import { CODECS } from '#main/storage/codec'
import { site } from '../../contract/sample-site'
import { good, removeFolder, tempFolder } from '../../contract/program'
import { listing, openStore, siteFile } from './files'
import { allowWriting, canForbid, forbidWriting } from '#tests/support/forbidding'

let root = ''
beforeEach(() => {
  root = tempFolder()
})
afterEach(() => removeFolder(root))

const nameOf = (made: Site) => ({ kind: 'site', id: made.id }) as const
const pathOf = (made: Site, ending = '.json'): string => join(root, 'sites', `${made.id}${ending}`)

/** A folder with one site in it, as a program that has ended left it. */
async function withSite(changes: Partial<Site> = {}): Promise<Site> {
  const made = site(changes)
  await good(openStore(root).create(nameOf(made), siteFile(made)))
  return made
}

describe('a document on disk', () => {
  it('is there, whole, for this user alone, when the write is acknowledged', async () => {
    const made = await withSite()
    expect(JSON.parse(readFileSync(pathOf(made), 'utf8'))).toEqual(siteFile(made))
    expect(statSync(pathOf(made)).mode & 0o777).toBe(0o600)
    for (const folder of ['.', 'sites', 'library', 'removed', 'damaged', 'backups'])
      expect([folder, statSync(join(root, folder)).mode & 0o777]).toEqual([folder, 0o700])
    expect(listing(root).filter((line) => line.includes('tmp'))).toEqual([])
  })

  it('is read once: what happens to the file afterwards does not reach an open document', async () => {
    const made = await withSite()
    const store = openStore(root)
    await good(store.open(nameOf(made)))
    writeFileSync(pathOf(made), 'garbage')
    expect((await good(store.open(nameOf(made)))).document.site).toEqual(made)
  })

  it('has a revision no other run of the program gives to another version', async () => {
    const made = await withSite()
    const first = await good(openStore(root).open(nameOf(made)))
    await new Promise((resolve) => setTimeout(resolve, 5))
    const second = await good(openStore(root).open(nameOf(made)))
    expect(second.revision).toBeGreaterThan(first.revision)
  })

  it('lies under its id in lower case, so that file systems without case cannot mix two up', async () => {
    const made = site({ id: 'ABCDEF00-0000-4000-8000-0000000000AB' })
    const store = openStore(root)
    await good(store.create(nameOf(made), siteFile(made)))
    const other = { kind: 'site', id: made.id.toLowerCase() } as const
    expect(await store.create(other, siteFile(made))).toMatchObject({ problem: { code: 'already-there' } })
    expect(readdirSync(join(root, 'sites')).toSorted()).toEqual([
      `${made.id.toLowerCase()}.json`,
      `${made.id.toLowerCase()}.last-good.json`,
    ])
  })

  it('is not written when writing is refused, and stays as it was', async () => {
    const made = await withSite()
    const before = listing(root)
    const refusal = fail({ code: 'data-folder-in-use', processId: 1, since: '' })
    const store = openStore(root, { mayWrite: () => refusal })
    const { revision } = await good(store.open(nameOf(made)))
    expect(await store.write(nameOf(made), siteFile({ ...made, notes: 'x' }), revision)).toEqual(refusal)
    expect(await store.remove(nameOf(made))).toEqual(refusal)
    expect(listing(root)).toEqual(before)
  })
})

describe('damage', () => {
  const wreck: readonly (readonly [string, (path: string) => void])[] = [
    ['cut short', (path) => truncateSync(path, 300)],
    ['emptied', (path) => truncateSync(path, 0)],
    ['filled with zeros', (path) => writeFileSync(path, Buffer.alloc(4096))],
    ['replaced by foreign JSON', (path) => writeFileSync(path, '{"hello": "world"}')],
    ['saved as UTF-16', (path) => writeFileSync(path, readFileSync(path, 'utf8'), 'utf16le')],
    [
      'saved as Latin-1',
      (path) => writeFileSync(path, readFileSync(path, 'utf8').replace('Cafe', 'Café'), 'latin1'),
    ],
    [
      'with a letter flipped in a key',
      (path) => writeFileSync(path, readFileSync(path, 'utf8').replace('"water"', '"wader"')),
    ],
    ['nested a million deep', (path) => writeFileSync(path, '['.repeat(1_000_000))],
    ['100 MB large', (path) => writeFileSync(path, Buffer.alloc(100_000_000, 32))],
    [
      'under another site’s id',
      (path) => writeFileSync(path, readFileSync(path, 'utf8').replace(/"id": "0{8}/, '"id": "11111111')),
    ],
  ]

  it.each(wreck)(
    '%s: the file is kept aside, the others open, the last good version comes back',
    async (_how, spoil) => {
      const made = await withSite()
      const other = await withSite({ name: 'Unharmed' })
      spoil(pathOf(made))
      const spoilt = readFileSync(pathOf(made))

      const store = openStore(root)
      const opened = await store.open(nameOf(made))
      expect(opened).toMatchObject({ ok: false, problem: { code: 'document-damaged', document: made.id } })
      const setAside =
        opened.ok || opened.problem.code !== 'document-damaged' ? null : opened.problem.setAside
      expect(readFileSync(join(root, setAside ?? 'none')).equals(spoilt)).toBe(true)

      const sites = await good(store.listSites())
      expect(sites.find(({ id }) => id === other.id)).toMatchObject({ state: 'good' })
      expect(sites.find(({ id }) => id === made.id)).toMatchObject({ state: 'damaged', setAside })

      expect((await good(store.recover(nameOf(made)))).document.site).toEqual(made)
      expect((await good(openStore(root).open(nameOf(made)))).document.site).toEqual(made)
      // what was damaged is still there for somebody who can mend it
      expect(readFileSync(join(root, setAside ?? 'none')).equals(spoilt)).toBe(true)
    },
  )

  it('twice in one second: both damaged files are kept', async () => {
    const made = await withSite()
    for (const content of ['first', 'second']) {
      writeFileSync(pathOf(made), content)
      await openStore(root).listSites()
    }
    const kept = readdirSync(join(root, 'damaged')).map((file) =>
      readFileSync(join(root, 'damaged', file), 'utf8'),
    )
    expect(kept.toSorted()).toEqual(['first', 'second'])
  })

  it.each([
    ['', -5],
    [' and the clock stood still', 0],
    [' and the clock was set back', 3600],
  ])(
    'comes back as last acknowledged, though the last good version was left behind%s',
    async (_when, later) => {
      const made = await withSite()
      const behind = readFileSync(pathOf(made, '.last-good.json'))
      const store = openStore(root)
      const { revision } = await good(store.open(nameOf(made)))
      const edited = siteFile({ ...made, notes: 'acknowledged' })
      await good(store.write(nameOf(made), edited, revision))
      // what a disk leaves that took the file and not its last good version
      writeFileSync(pathOf(made, '.last-good.json'), behind)
      const written = Math.floor(statSync(pathOf(made)).mtimeMs / 1000)
      utimesSync(pathOf(made), written, written)
      utimesSync(pathOf(made, '.last-good.json'), written + later, written + later)

      await good(openStore(root).open(nameOf(made)))
      rmSync(pathOf(made))
      const after = openStore(root)
      await after.listSites()
      expect((await good(after.recover(nameOf(made)))).document.site.notes).toBe('acknowledged')
    },
  )

  it('is still listed after the next start, until the site is removed', async () => {
    const made = await withSite()
    writeFileSync(pathOf(made), 'x')
    rmSync(pathOf(made, '.last-good.json'))
    await openStore(root).listSites()
    expect(await good(openStore(root).listSites())).toMatchObject([
      { state: 'damaged', id: made.id, lastGoodAt: null },
    ])
    await good(openStore(root).remove(nameOf(made)))
    expect(await good(openStore(root).listSites())).toEqual([])
    expect(readdirSync(join(root, 'damaged'))).toHaveLength(1)
  })

  it('of both the file and its last good version leaves the daily copies', async () => {
    const made = await withSite()
    const store = openStore(root)
    const { revision } = await good(store.open(nameOf(made)))
    await good(store.write(nameOf(made), siteFile({ ...made, notes: 'later' }), revision))
    writeFileSync(pathOf(made), 'x')
    writeFileSync(pathOf(made, '.last-good.json'), 'y')
    expect((await good(openStore(root).recover(nameOf(made)))).document.site).toEqual(made)
  })

  it('is listed with the name of what can be brought back, be it only a daily copy', async () => {
    const made = await withSite({ name: 'Harbour canteen' })
    const store = openStore(root)
    const { revision } = await good(store.open(nameOf(made)))
    await good(store.write(nameOf(made), siteFile({ ...made, notes: 'later' }), revision))
    writeFileSync(pathOf(made), 'x')
    const listed = { state: 'damaged', name: 'Harbour canteen', lastGoodAt: expect.any(String) }
    expect(await good(openStore(root).listSites())).toMatchObject([listed])
    rmSync(pathOf(made, '.last-good.json'))
    expect(await good(openStore(root).listSites())).toMatchObject([listed])
    rmSync(join(root, 'backups'), { recursive: true })
    expect(await good(openStore(root).listSites())).toMatchObject([{ name: null, lastGoodAt: null }])
  })

  it('a missing file with its last good version there is offered, not forgotten', async () => {
    const made = await withSite()
    rmSync(pathOf(made))
    const store = openStore(root)
    expect(await good(store.listSites())).toMatchObject([{ state: 'damaged', id: made.id, setAside: null }])
    expect((await good(store.recover(nameOf(made)))).document.site).toEqual(made)
  })

  it('done by another hand while the program runs: a whole document wins over memory, and the window is told', async () => {
    const made = await withSite()
    const store = openStore(root)
    const { revision } = await good(store.open(nameOf(made)))
    const theirs = { ...made, notes: 'typed into the file' }
    writeFileSync(pathOf(made), encode('site', siteFile(theirs)))
    expect(await store.write(nameOf(made), siteFile({ ...made, notes: 'mine' }), revision)).toMatchObject({
      problem: { code: 'document-changed-elsewhere' },
    })
    expect((await good(store.open(nameOf(made)))).document.site).toEqual(theirs)
  })

  it('done by another hand while the program runs: garbage is set aside, and the edit is saved', async () => {
    const made = await withSite()
    const store = openStore(root)
    const { revision } = await good(store.open(nameOf(made)))
    writeFileSync(pathOf(made), 'garbage')
    const edited = { ...made, notes: 'mine' }
    await good(store.write(nameOf(made), siteFile(edited), revision))
    expect((await good(openStore(root).open(nameOf(made)))).document.site).toEqual(edited)
    const [kept] = readdirSync(join(root, 'damaged'))
    expect(readFileSync(join(root, 'damaged', kept ?? ''), 'utf8')).toBe('garbage')
  })

  it('done by another hand while the program runs: a deleted file is written again', async () => {
    const made = await withSite()
    const store = openStore(root)
    const { revision } = await good(store.open(nameOf(made)))
    rmSync(join(root, 'sites'), { recursive: true })
    await good(store.write(nameOf(made), siteFile(made), revision))
    expect((await good(openStore(root).open(nameOf(made)))).document.site).toEqual(made)
  })
})

describe('versions', () => {
  const newer = {
    ...CODECS,
    site: {
      version: 3,
      decode: (text: string) => {
        const decoded = CODECS.site.decode(text)
        return decoded.ok ? { ...decoded, value: { ...decoded.value, from: 1 } } : decoded
      },
      encode: (document: Parameters<typeof CODECS.site.encode>[0]) => [
        encode('site', document).replace('"version": 2', '"version": 3'),
      ],
    },
  }

  it('a newer file is refused unchanged, and listed as what it is', async () => {
    const made = await withSite()
    const text = readFileSync(pathOf(made), 'utf8').replace('"version": 2', '"version": 3')
    writeFileSync(pathOf(made), text)
    const before = listing(root)
    const store = openStore(root)
    expect(await store.open(nameOf(made))).toEqual({
      ok: false,
      problem: { code: 'document-newer', version: 3, known: 2 },
    })
    expect(await store.recover(nameOf(made))).toMatchObject({ problem: { code: 'document-newer' } })
    expect(await store.create(nameOf(made), siteFile(made))).toMatchObject({
      problem: { code: 'document-newer' },
    })
    expect(await good(store.listSites())).toEqual([{ state: 'newer', id: made.id, version: 3 }])
    expect(readFileSync(pathOf(made), 'utf8')).toBe(text)
    expect(listing(root)).toEqual(before)
  })

  it('the original of an older file is kept before the first write in the new version, and only then', async () => {
    const made = await withSite()
    const original = readFileSync(pathOf(made), 'utf8')
    const kept = join(root, 'older-versions', `${made.id}.v1.json`)
    const store = openStore(root, { codecs: newer })
    const { revision } = await good(store.open(nameOf(made)))
    expect(existsSync(kept)).toBe(false)
    const written = await good(store.write(nameOf(made), siteFile({ ...made, notes: 'a' }), revision))
    expect(readFileSync(kept, 'utf8')).toBe(original)
    await good(store.write(nameOf(made), siteFile({ ...made, notes: 'b' }), written.revision))
    expect(readFileSync(kept, 'utf8')).toBe(original)
    expect(readFileSync(pathOf(made), 'utf8')).toContain('"version": 3')
  })

  it('a real file of version 1 opens, is written as version 2 on its first edit, and is kept as it was', async () => {
    const text = readFileSync(new URL('../../fixtures/documents/site-v1-full.json', import.meta.url), 'utf8')
    const made = await withSite()
    const old = text.replace((JSON.parse(text) as { site: { id: string } }).site.id, made.id)
    writeFileSync(pathOf(made), old)
    const store = openStore(root)
    const { document, revision } = await good(store.open(nameOf(made)))
    expect(readFileSync(pathOf(made), 'utf8')).toBe(old)
    await good(
      store.write(nameOf(made), { ...document, site: { ...document.site, notes: 'edited' } }, revision),
    )
    expect(readFileSync(join(root, 'older-versions', `${made.id}.v1.json`), 'utf8')).toBe(old)
    expect(readFileSync(pathOf(made), 'utf8')).toContain('"version": 2')
    expect((await good(openStore(root).open(nameOf(made)))).document.site.notes).toBe('edited')
  })
})

describe.runIf(canForbid)('a folder that cannot be written', () => {
  it('is said at once, so that nobody else waits; the file is kept, and the next save gets through', async () => {
    const made = await withSite()
    const store = openStore(root)
    const { revision } = await good(store.open(nameOf(made)))
    forbidWriting(join(root, 'sites'))
    try {
      const began = performance.now()
      for (let time = 0; time < 5; time += 1)
        expect(await store.write(nameOf(made), siteFile({ ...made, notes: 'x' }), revision)).toMatchObject({
          problem: { code: 'not-saved', reason: 'the data folder cannot be written by this user' },
        })
      // the writer below conf would try for a second each time; what stands here is for a busy machine
      expect(performance.now() - began).toBeLessThan(4_500)
    } finally {
      allowWriting(join(root, 'sites'))
    }
    expect((await good(openStore(root).open(nameOf(made)))).document.site).toEqual(made)
    await good(store.write(nameOf(made), siteFile({ ...made, notes: 'y' }), revision))
    expect((await good(openStore(root).open(nameOf(made)))).document.site.notes).toBe('y')
  })
})
