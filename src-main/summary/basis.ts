import { createHash } from 'node:crypto'
import type { Library } from '#core/worksheet/site-row'

const digest = (text: string): string => createHash('sha1').update(text).digest('base64url').slice(0, 12)

/**
 * Tells whether the library is still the one a row was worked out from, as far as the site names it: a new price of a
 * product makes only the rows of its sites old.
 */
export function basisOf(library: Library): (uses: readonly string[]) => string {
  const records = new Map(
    [...library.products, ...library.instruments].map((record) => [
      record.id,
      digest(JSON.stringify(record)),
    ]),
  )
  const { serviceLevel, cautionTexts } = library.settings
  const settings = digest(JSON.stringify([serviceLevel, cautionTexts]))
  return (uses) => digest([settings, ...uses.map((id) => records.get(id) ?? '-')].join(' '))
}
