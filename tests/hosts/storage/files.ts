import { readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { compose } from '#main/compose'
import { FileStore } from '#main/storage/document-store'
import { prepareDataFolder } from '#main/storage/data-folder'
import type { StoreOptions } from '#main/storage/document-store'
import type { SiteFile } from '#core/documents/site-schema'
import type { Site } from '#core/records/index'
import { ok } from '#core/outcome'

/** Everything in a folder, as `path: size`, for "nothing was written". */
export const listing = (root: string): readonly string[] =>
  readdirSync(root, { recursive: true, encoding: 'utf8' })
    .map((name) => ({ name, stats: statSync(join(root, name)) }))
    .filter(({ stats }) => stats.isFile())
    .map(({ name, stats }) => `${name}: ${stats.size}`)
    .toSorted()

export const openStore = (root: string, changes: Partial<StoreOptions> = {}): FileStore => {
  prepareDataFolder(root)
  return new FileStore({
    root,
    now: () => '2025-03-09T08:00:00.000Z',
    mayWrite: () => ok(undefined),
    ...changes,
  })
}

export const siteFile = (site: Site): SiteFile => ({
  format: 'dosewright-site',
  version: 2,
  site,
  products: [],
  instruments: [],
})

export { compose }
