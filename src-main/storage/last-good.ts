import type { Outcome } from '#core/outcome'
import type { Backups } from './backups'
import type { Codec } from './codec'
import type { DocumentFile } from './document-file'
import { changedAt, type LastGood } from './list-sites'
import { readText } from './read-text'

/** What takes the place of a damaged document: its last good version, or the newest copy that can be read. */
export function lastGoodOf<T>(file: DocumentFile<T>, backups: Backups, codec: Codec<T>): LastGood<T> | null {
  const beside = file.readLastGood()
  if (beside !== null) return { document: beside.document, at: changedAt(beside.path) }
  for (const { copy, takenAt } of backups.list()) {
    const read = readCopy(backups, copy, codec)
    if (read?.ok === true) return { document: read.value, at: takenAt }
  }
  return null
}

/** One of the copies; null when there is none of that name. */
export function readCopy<T>(backups: Backups, copy: string, codec: Codec<T>): Outcome<T> | null {
  const text = backups.has(copy) ? readText(backups.path(copy)) : null
  if (text === null) return null
  const decoded = text.ok ? codec.decode(text.value) : text
  return decoded.ok ? { ok: true, value: decoded.value.document } : decoded
}
