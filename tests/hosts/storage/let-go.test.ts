import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { encode } from '#core/documents/encode'
import { CODECS, type Codecs } from '#main/storage/codec'
import { SITES_KEPT } from '#main/storage/document-store'
import { good, removeFolder, tempFolder } from '../../contract/program'
import { site } from '../../contract/sample-site'
import { openStore, siteFile } from './files'

let root: string
beforeEach(() => {
  root = tempFolder()
})
afterEach(() => removeFolder(root))

/** Counts how often a site file is read. */
function counting(): { readonly codecs: Codecs; readonly reads: () => number } {
  let reads = 0
  const decode = (text: string) => {
    reads += 1
    return CODECS.site.decode(text)
  }
  return { codecs: { ...CODECS, site: { ...CODECS.site, decode } }, reads: () => reads }
}
const nameOf = (id: string) => ({ kind: 'site', id }) as const

describe('of very many sites', () => {
  it(`only the ${SITES_KEPT} asked for last stay in memory`, async () => {
    const { codecs, reads } = counting()
    const made = Array.from({ length: SITES_KEPT + 3 }, () => site())
    const store = openStore(root, { codecs })
    for (const one of made) await good(store.create(nameOf(one.id), siteFile(one)))
    const before = reads()
    for (const one of made.slice(-SITES_KEPT)) await good(store.open(nameOf(one.id)))
    expect(reads() - before).toBe(0)
    for (const one of made.slice(0, 3)) await good(store.open(nameOf(one.id)))
    expect(reads() - before).toBe(3)
  })

  it('one let go meanwhile is edited on the revision the window has, and nothing is lost', async () => {
    const store = openStore(root)
    const first = site()
    const { revision } = await good(store.create(nameOf(first.id), siteFile(first)))
    for (let i = 0; i < SITES_KEPT; i += 1) {
      const other = site()
      await good(store.create(nameOf(other.id), siteFile(other)))
    }
    const edited = { ...first, notes: 'after it was let go' }
    await good(store.write(nameOf(first.id), siteFile(edited), revision))
    expect((await good(openStore(root).open(nameOf(first.id)))).document.site).toEqual(edited)
  })

  it('one let go and changed by another hand meanwhile is not written over', async () => {
    const store = openStore(root)
    const first = site()
    const { revision } = await good(store.create(nameOf(first.id), siteFile(first)))
    for (let i = 0; i < SITES_KEPT; i += 1) {
      const other = site()
      await good(store.create(nameOf(other.id), siteFile(other)))
    }
    const theirs = { ...first, notes: 'theirs' }
    writeFileSync(join(root, 'sites', `${first.id}.json`), encode('site', siteFile(theirs)))
    expect(
      await store.write(nameOf(first.id), siteFile({ ...first, notes: 'mine' }), revision),
    ).toMatchObject({ ok: false, problem: { code: 'document-changed-elsewhere' } })
    expect((await good(store.open(nameOf(first.id)))).document.site).toEqual(theirs)
  })
})
