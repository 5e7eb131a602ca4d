import { chain, fail, ok, type Outcome } from '../outcome'
import { megabytes } from './limits'
import { parseJson } from './parse-json'

const FORMAT = 'dosewright-archive'
const VERSION = 1
/** A firm with hundreds of sites; a text twice as long is near what a program can hold at all. */
export const ARCHIVE_CHARACTERS = 200_000_000

/** Many site files as the parts of one text, to take everything elsewhere. Each file stands in it as it was written. */
export const archiveOf = (files: readonly string[]): readonly string[] => [
  `{\n"format": "${FORMAT}",\n"version": ${VERSION},\n"sites": [\n`,
  ...files.flatMap((file, index) => (index === 0 ? [file.trim()] : [',\n', file.trim()])),
  '\n]\n}\n',
]

/** Whether a text says of itself that it is an archive; what it holds is not looked at. Its first 200 signs will do. */
export const isArchive = (text: string): boolean =>
  new RegExp(`^\\uFEFF?\\s*\\{\\s*"format"\\s*:\\s*"${FORMAT}"`).test(text.slice(0, 200))

/**
 * The site files of an archive, each as a text of its own, so that one that does not hold stops no other, and there is
 * progress to show and a moment to cancel between two. Whether a text is a site file is for its taker to find out.
 */
export function filesOf(text: string): Outcome<readonly string[]> {
  if (text.length > ARCHIVE_CHARACTERS)
    return fail({ code: 'document-too-large', megabytes: megabytes(text.length) })
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
    return ok(sites.map((site: unknown) => JSON.stringify(site)))
  })
}
