import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { isDeepStrictEqual } from 'node:util'
import type { Call } from '#core/contract/contract'
import { openArchive } from '#core/documents/archive'
import { difference } from '#core/documents/changes'
import { decode } from '#core/documents/decode'
import { encode } from '#core/documents/encode'
import { decodeGlassFile } from '#core/documents/glass-file'
import { sentence } from '#core/messages/sentence'
import type { Problem } from '#core/problem'
import type { GlassCheck, Id } from '#core/records/index'
import { takeCheck } from '#renderer/commands/glass.ts'
import { good, removeFolder, tempFolder } from '../../contract/program'
import { listing, openStore } from '../storage/files'

/** Takes a text all the way in; true when it was accepted, throws when something is wrong with that or with a refusal. */
export type Way = (text: string) => Promise<boolean>

function explained(problem: Problem): void {
  const told = sentence(problem)
  if (!/^["A-Z].{20,400}\.$/s.test(told)) throw new Error(`no good sentence: ${told}`)
}

/** A site file chosen in the window. */
export function siteWay(call: Call, folder: string): Way {
  return async (text) => {
    const before = listing(folder)
    const decoded = decode('site', text)
    const imported = await call('site.import', { text, choice: 'take-theirs' })
    const after = listing(folder)
    if (imported.ok !== decoded.ok) throw new Error(`reader and import disagree: ${JSON.stringify(imported)}`)
    if (!imported.ok) {
      explained(imported.problem)
      if (!isDeepStrictEqual(after, before))
        throw new Error(`a refused file wrote something: ${after.join()}`)
      return false
    }
    if (!decoded.ok) return false
    const { document } = decoded.value
    const again = decode('site', encode('site', document))
    if (!again.ok || !isDeepStrictEqual(again.value.document, document))
      throw new Error('does not come back as it went in')
    const { site } = await good(call('site.open', { id: imported.value.id }))
    if (!isDeepStrictEqual(site, document.site)) throw new Error('is not what was imported')
    return true
  }
}

/** A file of many sites: looked into by the window, then taken in one by one. */
export function archiveWay(call: Call, folder: string): Way {
  return async (text) => {
    const archive = openArchive(text)
    if (!archive.ok) {
      explained(archive.problem)
      return false
    }
    let all = true
    const { sites, removed, settings } = archive.value
    if (settings !== null) {
      const read = await call('settings.read', { text: settings })
      if (!read.ok) explained(read.problem)
      all = read.ok
    }
    for (const file of [...sites, ...removed.map((one) => one.text)])
      all = (await siteWay(call, folder)(file)) && all
    return all
  }
}

/** A glass check of the kitchen: looked into by the window, then saved with its site. What it takes, the host takes. */
export async function glassWay(
  call: Call,
  siteText: string,
): Promise<{ readonly way: Way; readonly siteId: Id; readonly check: GlassCheck }> {
  const decoded = decode('site', siteText)
  if (!decoded.ok) throw new Error(JSON.stringify(decoded.problem))
  const site = { ...decoded.value.document.site, id: '5a5a5a5a-0000-4000-8000-000000000001' }
  const [check] = site.glassChecks
  if (check === undefined) throw new Error('the fixture has no glass check')
  let { revision: base } = await good(call('site.create', { site }))
  let current = site
  const way: Way = async (text) => {
    const read = decodeGlassFile(text)
    if (!read.ok) {
      explained(read.problem)
      return false
    }
    const next = takeCheck({ ...current, glassChecks: [] }, read.value.check)
    const saved = await call('site.edit', { id: site.id, base, changes: difference(current, next) })
    if (!saved.ok) throw new Error(`the window took what the host refuses: ${JSON.stringify(saved.problem)}`)
    base = saved.value.revision
    current = next
    return true
  }
  return { way, siteId: site.id, check }
}

/** A library document that lies on the disk in this state when the program starts. */
export function diskWay(kind: 'products' | 'instruments' | 'settings'): Way {
  return async (text) => {
    const root = tempFolder()
    try {
      const store = openStore(root)
      const path = join(root, 'library', `${kind}.json`)
      const bytes = Buffer.from(text)
      writeFileSync(path, bytes)
      const decoded = decode(kind, bytes.toString())
      const opened = await store.open({ kind })
      if (opened.ok !== decoded.ok) throw new Error(`reader and store disagree: ${JSON.stringify(opened)}`)
      if (opened.ok && decoded.ok) {
        const again = decode(kind, encode(kind, decoded.value.document))
        if (!again.ok || !isDeepStrictEqual(again.value.document, opened.value.document))
          throw new Error('does not come back as it went in')
        return true
      }
      if (opened.ok) return false
      explained(opened.problem)
      const [aside] = readdirSync(join(root, 'damaged'))
      const kept = opened.problem.code === 'document-newer' ? path : join(root, 'damaged', aside ?? '')
      if (!readFileSync(kept).equals(bytes)) throw new Error('the damaged file is not kept as it was')
      return false
    } finally {
      removeFolder(root)
    }
  }
}
