import { chain, fail, ok, type Outcome } from '../outcome'
import { decodeValue } from './decode'
import { layOut } from './layout'
import { FORMATS } from './formats'
import { megabytes } from './limits'
import { parseJson } from './parse-json'
import type { SiteFile } from './site-schema'

const FORMAT = 'dosewright-archive'
const VERSION = 1
/** A firm with hundreds of sites; a text twice as long is near what a program can hold at all. */
const CHARACTERS = 200_000_000

/** Many site files as one text, to take everything elsewhere. */
export const encodeArchive = (sites: readonly SiteFile[]): string =>
  `${layOut({ format: FORMAT, version: VERSION, sites })}\n`

/** Whether a text says of itself that it is an archive; what it holds is not looked at. */
export const isArchive = (text: string): boolean =>
  new RegExp(`^\\uFEFF?\\s*\\{\\s*"format"\\s*:\\s*"${FORMAT}"`).test(text.slice(0, 200))

/**
 * The site files of an archive, each by itself: one that does not hold is a problem in its place and does not stop the
 * others. The caller takes them in one by one, so that there is progress to show and a moment to cancel.
 */
export function decodeArchive(text: string): Outcome<readonly Outcome<SiteFile>[]> {
  if (text.length > CHARACTERS) return fail({ code: 'document-too-large', megabytes: megabytes(text.length) })
  return chain(parseJson(text.startsWith('\uFEFF') ? text.slice(1) : text), (value) => {
    if (typeof value !== 'object' || value === null || Array.isArray(value))
      return fail({ code: 'document-foreign' })
    const { format, version, sites } = value as Readonly<Record<string, unknown>>
    if (format !== FORMAT) return fail({ code: 'document-foreign' })
    if (typeof version !== 'number' || version < 1)
      return fail({ code: 'document-malformed', place: 'version', reason: 'is not a version number' })
    if (version > VERSION) return fail({ code: 'document-newer', version, known: VERSION })
    if (!Array.isArray(sites))
      return fail({ code: 'document-malformed', place: 'sites', reason: 'is not a list' })
    return ok(
      sites.map((site: unknown) => chain(decodeValue(FORMATS.site, site), ({ document }) => ok(document))),
    )
  })
}
