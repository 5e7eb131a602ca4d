import { all, chain, fail, ok, type Outcome } from '../outcome'
import { megabytes } from './limits'
import { parseJson } from './parse-json'

const FORMAT = 'dosewright-archive'
/** Version 2 holds the settings and the sites taken off the list as well. */
const VERSION = 2
/** A firm with hundreds of sites; a text twice as long is near what a program can hold at all. */
export const ARCHIVE_CHARACTERS = 200_000_000

/** A site taken off the list, and when. */
export interface RemovedFile {
  readonly removedAt: string
  readonly text: string
}

/** What an archive holds, each document as the text of a file of its own. */
export interface Archive {
  readonly sites: readonly string[]
  readonly removed: readonly RemovedFile[]
  readonly settings: string | null
}

/** Many documents as the parts of one text, to take everything elsewhere. Each stands in it as it was written. */
export const archiveOf = ({ sites, removed, settings }: Archive): readonly string[] => [
  `{\n"format": "${FORMAT}",\n"version": ${VERSION},\n"settings": ${settings?.trim() ?? 'null'},\n"sites": [\n`,
  ...listed(sites.map((file) => file.trim())),
  '\n],\n"removed": [\n',
  ...listed(
    removed.map(
      ({ removedAt, text }) => `{ "removedAt": ${JSON.stringify(removedAt)}, "file": ${text.trim()} }`,
    ),
  ),
  '\n]\n}\n',
]

const listed = (parts: readonly string[]): readonly string[] =>
  parts.flatMap((part, index) => (index === 0 ? [part] : [',\n', part]))

/** Whether a text says of itself that it is an archive; what it holds is not looked at. Its first 200 signs will do. */
export const isArchive = (text: string): boolean =>
  new RegExp(`^\\uFEFF?\\s*\\{\\s*"format"\\s*:\\s*"${FORMAT}"`).test(text.slice(0, 200))

/**
 * What an archive holds, each document as a text of its own, so that one that does not hold stops no other, and there is
 * progress to show and a moment to cancel between two. Whether a text is what it should be is for its taker to find out.
 * Version 1 had sites only.
 */
export function openArchive(text: string): Outcome<Archive> {
  if (text.length > ARCHIVE_CHARACTERS)
    return fail({ code: 'document-too-large', megabytes: megabytes(text.length) })
  return chain(parseJson(text.startsWith('\uFEFF') ? text.slice(1) : text), (value) => {
    if (!isGroup(value)) return fail({ code: 'document-foreign' })
    const { format, version, sites } = value
    if (format !== FORMAT) return fail({ code: 'document-foreign' })
    if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
      return malformed('version', 'is not a version number')
    if (version > VERSION) return fail({ code: 'document-newer', version, known: VERSION })
    if (!Array.isArray(sites)) return malformed('sites', 'is not a list')
    const files = sites.map((site: unknown) => JSON.stringify(site))
    return version === 1 ? ok({ sites: files, removed: [], settings: null }) : whole(value, files)
  })
}

type Group = Readonly<Record<string, unknown>>

const PARTS: ReadonlySet<string> = new Set(['format', 'version', 'settings', 'sites', 'removed'])

function whole(value: Group, sites: readonly string[]): Outcome<Archive> {
  const strange = Object.keys(value).find((key) => !PARTS.has(key))
  if (strange !== undefined) return malformed(strange, 'is not known')
  const { settings, removed } = value
  if (settings !== null && !isGroup(settings)) return malformed('settings', 'is not a group of entries')
  if (!Array.isArray(removed)) return malformed('removed', 'is not a list')
  return chain(all(removed.map((item: unknown, index) => removedFile(item, `removed.${index}`))), (files) =>
    ok({ sites, removed: files, settings: settings === null ? null : JSON.stringify(settings) }),
  )
}

function removedFile(item: unknown, place: string): Outcome<RemovedFile> {
  if (!isGroup(item)) return malformed(place, 'is not a group of entries')
  const { removedAt, file, ...more } = item
  if (typeof removedAt !== 'string' || !INSTANT.test(removedAt))
    return malformed(`${place}.removedAt`, 'is not a moment in time')
  const [strange] = Object.keys(more)
  if (strange !== undefined) return malformed(`${place}.${strange}`, 'is not known')
  return file === undefined
    ? malformed(`${place}.file`, 'is missing')
    : ok({ removedAt, text: JSON.stringify(file) })
}

/** ISO 8601 in universal time, as the program writes it. */
const INSTANT = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.\d+)?Z$/

const malformed = (place: string, reason: string): Outcome<never> =>
  fail({ code: 'document-malformed', place, reason })

const isGroup = (value: unknown): value is Group =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
