import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { archiveOf, filesOf } from '#core/documents/archive'
import { decode } from '#core/documents/decode'
import { encode } from '#core/documents/encode'
import { decodeGlassFile, encodeGlassFile } from '#core/documents/glass-file'
import { sentence } from '#core/messages/sentence'
import type { Outcome } from '#core/outcome'
import { mutated } from './mutate'
import { seeded } from './random'
import { check } from '#tests/support/glass-check'

const fixture = (name: string): string =>
  readFileSync(new URL(`../../fixtures/documents/${name}.json`, import.meta.url), 'utf8')

/** What a reader makes of a text, and the text its own reading writes again. */
type Reader = (text: string) => Outcome<string>

const library =
  (kind: 'products' | 'instruments' | 'settings'): Reader =>
  (text) => {
    const read = decode(kind, text)
    return read.ok ? { ok: true, value: encode(kind, read.value.document) } : read
  }

const READERS: readonly (readonly [name: string, whole: string, reader: Reader])[] = [
  ['products', fixture('products-v1'), library('products')],
  ['instruments', fixture('instruments-v1'), library('instruments')],
  ['settings', fixture('settings-v1'), library('settings')],
  [
    'everything as one file',
    archiveOf([fixture('site-v2-new'), fixture('site-v1-new')]).join(''),
    (text) => {
      const files = filesOf(text)
      return files.ok ? { ok: true, value: archiveOf(files.value).join('') } : files
    },
  ],
  [
    'glass check',
    encodeGlassFile(check.id, 'Harbourview Hotel bar', check),
    (text) => {
      const read = decodeGlassFile(text)
      return read.ok
        ? { ok: true, value: encodeGlassFile(read.value.siteId, read.value.siteName, read.value.check) }
        : read
    },
  ],
]

export interface ReadTally {
  accepted: number
  refused: number
}

/**
 * Damaged texts of every file but a site's through its reader: none throws, a refused one is explained in a sentence, an
 * accepted one comes back as it was read. They have no import of their own: a library comes in with a site file, an archive
 * is taken apart into site files, a glass check is read in the window. Throws with the seed that breaks this; the damage
 * is that of site files, drawn from the seed, since it works on text and not on values fast-check could make smaller.
 */
export function mutateOthers(runs: number, seed: number): Readonly<Record<string, ReadTally>> {
  const tally: Record<string, ReadTally> = {}
  for (const [name, whole, read] of READERS) {
    const counted: ReadTally = { accepted: 0, refused: 0 }
    tally[name] = counted
    fc.assert(
      fc.property(fc.noShrink(fc.nat()), (one) => {
        const found = read(mutated(whole, seeded(one)))
        if (found.ok) {
          counted.accepted += 1
          const again = read(found.value)
          return again.ok && again.value === found.value
        }
        counted.refused += 1
        return /^["A-Z].{20,400}\.$/s.test(sentence(found.problem))
      }),
      { numRuns: Math.ceil(runs / READERS.length), seed },
    )
  }
  return tally
}
