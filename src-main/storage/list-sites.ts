import { readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import type { ListedSite, Stored } from '#core/contract/ports'
import { siteFacts, type SiteFacts } from '#core/documents/site-facts'
import type { SiteFile } from '#core/documents/site-schema'
import type { Outcome } from '#core/outcome'

/** What is noted of site files that have not changed since, and which ones nobody has looked into yet. */
export interface Noted {
  readonly sites: ReadonlyMap<string, SiteFacts & { readonly changedAt: string }>
  readonly waiting: ReadonlySet<string>
}
export type SiteNotes = () => Promise<Noted>
export const NO_NOTES: Noted = { sites: new Map(), waiting: new Set() }

const SITE_FILE = /^([\da-f]{8}-[\da-f]{4}-[\da-f]{4}-[\da-f]{4}-[\da-f]{12})\.(?:.*\.)?json$/

/**
 * The ids of all sites that have left a trace: a document, a last good version, or a damaged file set aside. Other
 * files in these folders are nobody's business and stay as they are.
 */
export function siteKeys(root: string): readonly string[] {
  const names = [...readdirSync(join(root, 'sites')), ...readdirSync(join(root, 'damaged'))]
  const keys = names.map((name) => SITE_FILE.exec(name)?.[1]).filter((key) => key !== undefined)
  return [...new Set(keys)].toSorted()
}

interface Look {
  readonly found: Outcome<Stored<SiteFile>>
  readonly path: string
  /** what can be brought back in place of a damaged document */
  readonly lastGood: () => LastGood<SiteFile> | null
}

export interface LastGood<T> {
  readonly document: T
  readonly at: string | null
}

/** Each site as it stands. One that cannot be read is a row of its own and never stops the others. */
export function listSites(
  keys: readonly string[],
  noted: Noted,
  look: (id: string) => Look,
): readonly ListedSite[] {
  return keys.flatMap((id): readonly ListedSite[] => {
    const known = noted.sites.get(id)
    if (known !== undefined) return [{ state: 'good', ...known }]
    if (noted.waiting.has(id)) return [{ state: 'waiting', id }]
    const { found, path, lastGood } = look(id)
    if (found.ok)
      return [
        {
          state: 'good',
          ...siteFacts(found.value.document.site),
          changedAt: changedAt(path),
        },
      ]
    const { problem } = found
    if (problem.code === 'document-newer') return [{ state: 'newer', id, version: problem.version }]
    if (problem.code === 'not-found') return []
    const setAside = problem.code === 'document-damaged' ? problem.setAside : null
    const good = lastGood()
    const name = good?.document.site.name ?? null
    return [{ state: 'damaged', id, name, setAside, lastGoodAt: good?.at ?? null }]
  })
}

export const changedAt = (path: string): string | null =>
  statSync(path, { throwIfNoEntry: false })?.mtime.toISOString() ?? null
