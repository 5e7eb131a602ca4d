import { chain, fail, ok, type Outcome } from '../outcome'
import { firstFault } from './fault'
import { FORMATS, type DocumentKind, type Documents, type Format } from './formats'
import { DOCUMENT_LIMITS, megabytes } from './limits'
import { migrate } from './migrate'
import { parseJson } from './parse-json'
import { sureOf } from './sure'
import { duplicateId } from './unique-ids'

export interface Decoded<T> {
  readonly document: T
  /** the version the text was written in; lower than the format's own when steps were taken */
  readonly from: number
}

/**
 * A document from its text: size, JSON, format name, version, steps up to today, schema, ids. The first thing that does
 * not hold is the problem, with its place. The result is frozen through and through.
 */
export const decode = <K extends DocumentKind>(kind: K, text: string): Outcome<Decoded<Documents[K]>> =>
  decodeAs(FORMATS[kind], text)

/** The same for a format given as data, so that steps between versions can be proved before there are any. */
export function decodeAs<T>(format: Format<T>, text: string): Outcome<Decoded<T>> {
  if (text.length > DOCUMENT_LIMITS.characters)
    return fail({ code: 'document-too-large', megabytes: megabytes(text.length) })
  // some editors put a byte order mark in front of UTF-8
  return chain(parseJson(text.startsWith('\uFEFF') ? text.slice(1) : text), (value) =>
    decodeValue(format, value),
  )
}

/** The same for a value that is JSON already, such as one part of an archive. */
export function decodeValue<T>(format: Format<T>, value: unknown): Outcome<Decoded<T>> {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return fail({ code: 'document-foreign' })
  if ((value as Readonly<Record<string, unknown>>)['format'] !== format.format)
    return fail({ code: 'document-foreign' })
  return chain(
    migrate(value as Readonly<Record<string, unknown>>, format.version, format.steps),
    ({ document, from }) => chain(check(format, document), (checked) => ok({ document: checked, from })),
  )
}

/**
 * A document that is to be kept, checked as a whole: schema and ids. Frozen: itself where it is already just what the
 * schema gives back, as nearly all are, else the copy the schema makes.
 */
export function check<T>(format: Pick<Format<T>, 'schema'>, value: unknown): Outcome<T> {
  if (sureOf(format.schema)(value)) return idsChecked(value as T)
  const parsed = format.schema.safeParse(value, { reportInput: true })
  return parsed.success
    ? idsChecked(parsed.data)
    : fail({ code: 'document-malformed', ...firstFault(parsed.error) })
}

function idsChecked<T>(document: T): Outcome<T> {
  const twice = duplicateId(document)
  return twice === null ? ok(document) : fail({ code: 'document-malformed', ...twice })
}
