import { existsSync, readdirSync, readFileSync, rmSync, statSync, truncateSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { FileStore } from '#main/storage/document-store'
import { site } from '../../contract/sample-site'
import { good, removeFolder, tempFolder } from '../../contract/program'
import { openStore, siteFile } from './files'

let root = ''
beforeEach(() => {
  root = tempFolder()
})
afterEach(() => removeFolder(root))

const made = site({})
const name = { kind: 'site', id: made.id } as const
const path = (ending = '.json'): string => join(root, 'sites', `${made.id}${ending}`)
const notesIn = (file: string): string =>
  (JSON.parse(readFileSync(file, 'utf8')) as { readonly site: { readonly notes: string } }).site.notes

/** A store with the site in it, and its edits saved one after another. */
async function saved(...edits: readonly string[]): Promise<FileStore> {
  const store = openStore(root)
  let { revision } = await good(store.create(name, siteFile(made)))
  for (const notes of edits)
    ({ revision } = await good(store.write(name, siteFile({ ...made, notes }), revision)))
  return store
}

const broughtBack = async (): Promise<string> => {
  const store = openStore(root)
  await store.listSites()
  return (await good(store.recover(name))).document.site.notes
}

describe('the version saved last, in the second after', () => {
  it('outlives the deletion of its file', async () => {
    await saved('first', 'acknowledged')
    rmSync(path())
    expect(await broughtBack()).toBe('acknowledged')
  })

  it('outlives it in the middle of the next save too', async () => {
    const store = await saved('first', 'acknowledged')
    const { revision } = await good(store.open(name))
    rmSync(path())
    await good(store.write(name, siteFile({ ...made, notes: 'written again' }), revision))
    rmSync(path())
    expect(await broughtBack()).toBe('written again')
  })

  it('is lost with damage inside the file, and then only what that second brought', async () => {
    const store = await saved('an hour ago')
    store.close()
    const { revision } = await good(store.open(name))
    await good(store.write(name, siteFile({ ...made, notes: 'just now' }), revision))
    truncateSync(path(), 100)
    expect(await broughtBack()).toBe('an hour ago')
  })

  it('becomes the last good version, a file of its own, though saves go on', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] })
    try {
      const store = await saved('one')
      for (let tenth = 0; tenth < 15; tenth += 1) {
        const { revision } = await good(store.open(name))
        await good(store.write(name, siteFile({ ...made, notes: `${tenth}` }), revision))
        vi.advanceTimersByTime(100)
      }
      expect(Number(notesIn(path('.last-good.json')))).toBeGreaterThanOrEqual(8)
      vi.advanceTimersByTime(1_000)
      expect(notesIn(path('.last-good.json'))).toBe('14')
      expect(statSync(path('.last-good.json')).ino).not.toBe(statSync(path()).ino)
      expect(existsSync(path('.newest.json'))).toBe(false)
    } finally {
      vi.useRealTimers()
    }
  })

  it('becomes so when the program closes, and when it was killed before, on the next opening', async () => {
    const store = await saved('closed')
    store.close()
    expect(notesIn(path('.last-good.json'))).toBe('closed')

    const { revision } = await good(store.open(name))
    await good(store.write(name, siteFile({ ...made, notes: 'killed' }), revision))
    expect(notesIn(path('.last-good.json'))).toBe('closed')
    await good(openStore(root).open(name))
    expect(notesIn(path('.last-good.json'))).toBe('killed')
    expect(readdirSync(join(root, 'sites')).toSorted()).toEqual([
      `${made.id}.json`,
      `${made.id}.last-good.json`,
    ])
  })

  it('leaves nothing behind when the site is removed', async () => {
    const store = await saved('edited')
    await good(store.remove(name))
    store.close()
    expect(readdirSync(join(root, 'sites'))).toEqual([])
  })

  it('is not copied over by what another hand put there meanwhile', async () => {
    const store = await saved('ours')
    rmSync(path())
    const other = openStore(root)
    const { revision } = await good(other.recover(name))
    await good(other.write(name, siteFile({ ...made, notes: 'theirs' }), revision))
    other.close()
    const before = readFileSync(path('.last-good.json'), 'utf8')
    store.close()
    expect(readFileSync(path('.last-good.json'), 'utf8')).toBe(before)
    expect(notesIn(path('.last-good.json'))).toBe('theirs')
  })
})
