import { readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import type { ListedSite, Stored } from '#core/contract/ports'
import type { SiteFile } from '#core/documents/site-schema'
import type { Outcome } from '#core/outcome'

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
  readonly lastGoodPath: string
}

/** Each site as it stands. One that cannot be read is a row of its own and never stops the others. */
export function listSites(keys: readonly string[], look: (id: string) => Look): readonly ListedSite[] {
  return keys.flatMap((id): readonly ListedSite[] => {
    const { found, path, lastGoodPath } = look(id)
    if (found.ok)
      return [
        {
          state: 'good',
          id: found.value.document.site.id,
          site: found.value.document.site,
          changedAt: changedAt(path),
        },
      ]
    const { problem } = found
    if (problem.code === 'document-newer') return [{ state: 'newer', id, version: problem.version }]
    if (problem.code === 'not-found') return []
    const setAside = problem.code === 'document-damaged' ? problem.setAside : null
    return [{ state: 'damaged', id, setAside, lastGoodAt: changedAt(lastGoodPath) }]
  })
}

const changedAt = (path: string): string | null =>
  statSync(path, { throwIfNoEntry: false })?.mtime.toISOString() ?? null
