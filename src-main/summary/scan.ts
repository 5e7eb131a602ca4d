import { readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'

export interface SeenFile {
  /** a site's id in lower case */
  readonly key: string
  readonly path: string
  /** different after every write to the file, whoever wrote */
  readonly mark: string
  readonly changedAt: string
}

const SITE_FILE = /^([\da-f]{8}-[\da-f]{4}-[\da-f]{4}-[\da-f]{4}-[\da-f]{12})\.json$/

/** The site files as they lie there. */
export function scan(root: string): readonly SeenFile[] {
  const folder = join(root, 'sites')
  return readdirSync(folder).flatMap((name) => {
    const key = SITE_FILE.exec(name)?.[1]
    const seen = key === undefined ? null : look(folder, key)
    return seen === null ? [] : [seen]
  })
}

/** One site file; null when there is none. */
export function look(folder: string, key: string): SeenFile | null {
  const path = join(folder, `${key}.json`)
  const stats = statSync(path, { throwIfNoEntry: false })
  if (stats === undefined) return null
  // size and time of writing can be set back by hand; the number and the time of change of a file cannot
  const mark = `${stats.ino}:${stats.size}:${stats.mtimeMs}:${stats.ctimeMs}`
  return { key, path, mark, changedAt: stats.mtime.toISOString() }
}
