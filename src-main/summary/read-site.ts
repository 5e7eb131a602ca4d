import { readFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { decode } from '#core/documents/decode'
import { siteFacts } from '#core/documents/site-facts'
import type { Site } from '#core/records/index'
import { decodeUtf8 } from '../storage/read-text'
import type { Entry } from './entry'
import { look, type SeenFile } from './scan'

/** What became of a look into a site file: read, not readable (and nothing done about it), or changed meanwhile. */
export type Reading =
  | { readonly state: 'read'; readonly entry: Entry; readonly site: Site }
  | { readonly state: 'strange'; readonly newer: boolean }
  | { readonly state: 'moving' }

/** Reads one site file and writes nothing. A file that changes while it is read is left for the next look. */
export function readSite(file: SeenFile): Reading {
  let text
  try {
    text = decodeUtf8(readFileSync(file.path))
  } catch {
    return { state: 'strange', newer: false }
  }
  const decoded = text.ok ? decode('site', text.value) : text
  if (look(dirname(file.path), file.key)?.mark !== file.mark) return { state: 'moving' }
  if (!decoded.ok) return { state: 'strange', newer: decoded.problem.code === 'document-newer' }
  const { site } = decoded.value.document
  if (site.id.toLowerCase() !== file.key || !text.ok) return { state: 'strange', newer: false }
  const { key, mark, changedAt } = file
  const facts = siteFacts(site)
  return {
    state: 'read',
    entry: { key, mark, changedAt, facts, timeZone: site.timeZone, uses: named(text.value), row: null },
    site,
  }
}

const NAMED = /"\w*(?:product|instrument)\w*":\s*"([\da-f-]{36})"/gi

/** Ids of products and instruments, wherever in the file they stand: one too many costs a little time, no more. */
const named = (text: string): readonly string[] => [
  ...new Set([...text.matchAll(NAMED)].map((match) => ownCopy(match[1] ?? ''))),
]

/** A part of a text keeps the whole of it in memory; its copy does not. */
const ownCopy = (part: string): string => Buffer.from(part, 'latin1').toString('latin1')
