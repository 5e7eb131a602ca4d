import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Arrived } from '#core/contract/ports'
import { encode } from '#core/documents/encode'
import { ok } from '#core/outcome'
import { arrivedHere } from '#core/services/arrived'
import { siteDocument, siteName } from '#core/services/site-document'
import { importArrived } from '#core/services/transfer'
import { prepareDataFolder } from '#main/storage/data-folder'
import { FileStore } from '#main/storage/document-store'
import { bigSite } from '../../bench/big-site'
import { removeFolder, tempFolder } from '../../contract/program'
import { good } from '../../support/outcomes'

let root: string
let documents: FileStore
beforeEach(() => {
  root = tempFolder()
  prepareDataFolder(root)
  documents = new FileStore({ root, now: () => '2026-03-02T10:00:00.000Z', mayWrite: () => ok(undefined) })
})
afterEach(() => {
  documents.close()
  removeFolder(root)
})

const theirs = bigSite(3, 2)
const mine = { ...theirs.site, notes: 'mine' }
const name = siteName(mine.id)
const ports = () => ({ documents, ids: { next: () => '0b0e9c54-8f0a-4a55-9a3b-2f3f5d0c7e11' } })

/** As a thread would: weighs the file while the program goes on with other things. */
const slow = (meanwhile: () => Promise<unknown>): Arrived => {
  const arrived = arrivedHere(theirs)
  return {
    ...arrived,
    settle: async (here, how) => {
      const settled = await arrived.settle(here, how)
      await meanwhile()
      return settled
    },
  }
}

describe('an edit made while a file is still being weighed', () => {
  it('is not written over: the import is told that the site has changed', async () => {
    const before = good(await documents.create(name, siteDocument(mine)))
    const edit = slow(() =>
      documents.write(name, siteDocument({ ...mine, notes: 'edited' }), before.revision),
    )
    const brought = await importArrived(ports(), edit, { choice: 'take-theirs' })
    expect(brought).toMatchObject({ ok: false, problem: { code: 'document-changed-elsewhere' } })
    expect(good(await documents.open(name)).document.site.notes).toBe('edited')
  })

  it('is no hindrance when it was made to another site', async () => {
    good(await documents.create(name, siteDocument(mine)))
    const other = bigSite(1, 1, 2).site
    const edit = slow(() => documents.create(siteName(other.id), siteDocument(other)))
    expect((await importArrived(ports(), edit, { choice: 'take-theirs' })).ok).toBe(true)
    expect(good(await documents.open(name)).document.site.notes).toBe(theirs.site.notes)
  })
})

describe('a site put in as bytes that were made elsewhere', () => {
  it('is the same document as one written from memory, with a revision of its own', async () => {
    const bytes = new TextEncoder().encode(encode('site', siteDocument(mine)))
    const revision = good(await documents.put(name, { bytes }, null))
    const opened = good(await documents.open(name))
    expect(opened.revision).toBe(revision)
    expect(opened.document.site).toEqual(mine)
    const next = good(await documents.write(name, siteDocument({ ...mine, notes: 'next' }), revision))
    expect(next.revision).toBeGreaterThan(revision)
    // neither over a newer version, nor over one that is there
    const refused = await documents.put(name, { bytes }, revision)
    expect(refused).toMatchObject({ ok: false, problem: { code: 'document-changed-elsewhere' } })
    expect(await documents.put(name, { bytes }, null)).toMatchObject({ problem: { code: 'already-there' } })
  })
})
