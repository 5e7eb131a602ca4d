import { existsSync, readdirSync, renameSync, statSync } from 'node:fs'
import { join } from 'node:path'
import type { SiteFile } from '#core/documents/site-schema'
import { chain, ok, type Outcome } from '#core/outcome'
import type { Codec } from './codec'
import { moveAside, stamp } from './file-moves'
import { readText } from './read-text'

/** Sites taken off the list, kept whole until somebody brings them back. */
export class RemovedSites {
  readonly #folder: string

  constructor(root: string) {
    this.#folder = join(root, 'removed')
  }

  put(path: string, key: string, now: string): void {
    moveAside(path, (suffix) => join(this.#folder, `${key}.${stamp(now)}${suffix}.json`))
  }

  /** Newest first. */
  list(): readonly { readonly key: string; readonly path: string; readonly removedAt: string }[] {
    return readdirSync(this.#folder)
      .filter((file) => /^[\da-f-]{36}\..*\.json$/.test(file))
      .map((file) => {
        const path = join(this.#folder, file)
        return { key: file.slice(0, 36), path, removedAt: statSync(path).ctime.toISOString() }
      })
      .toSorted((a, b) => (a.path < b.path ? 1 : -1))
      .toSorted((a, b) => (a.removedAt < b.removedAt ? 1 : a.removedAt > b.removedAt ? -1 : 0))
  }

  /** Puts the newest removed version back to `path`; false when there is none. */
  take(key: string, path: string): boolean {
    const newest = this.newest(key)
    if (newest === null || existsSync(path)) return false
    renameSync(newest, path)
    return true
  }

  /** Where the version lies that would be brought back; null when there is none. */
  newest(key: string): string | null {
    return this.list().find((removed) => removed.key === key)?.path ?? null
  }
}

/** A removed site, left where it is; null when it is gone. */
export function readRemoved(path: string, codec: Codec<SiteFile>): Outcome<SiteFile> | null {
  const text = readText(path)
  return text && chain(text, (found) => chain(codec.decode(found), ({ document }) => ok(document)))
}
