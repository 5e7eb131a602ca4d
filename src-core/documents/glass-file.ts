import { chain, fail, ok, type Outcome } from '../outcome'
import type { GlassCheck, Id } from '../records'
import { dayFromNumber, dayNumberOf } from '../units/days'
import { DOCUMENT_LIMITS } from './limits'
import { parseJson } from './parse-json'

/** A glass check on its way from the kitchen to the rep: version 1. */
export interface GlassFile {
  readonly format: 'dosewright-glass-check'
  readonly version: 1
  readonly siteId: Id
  readonly siteName: string
  readonly check: GlassCheck
}

const FORMAT = 'dosewright-glass-check'
const VERSION = 1
/** A check of every test answered ten times over is far below this. */
const MOST_CHARACTERS = 200_000
const MOST_ANSWERS = 500

export const encodeGlassFile = (siteId: Id, siteName: string, check: GlassCheck): string =>
  `${JSON.stringify({ format: FORMAT, version: VERSION, siteId, siteName, check } satisfies GlassFile, null, 2)}\n`

/**
 * A glass check from its text. Checked by hand and not by schema, because the window reads it before anything reaches
 * the host; the host checks the site once more when it is saved.
 * Problems: too large, not JSON, foreign, newer, or malformed with its place.
 */
export function decodeGlassFile(text: string): Outcome<GlassFile> {
  if (text.length > Math.min(MOST_CHARACTERS, DOCUMENT_LIMITS.characters))
    return fail({ code: 'document-too-large', megabytes: Math.max(1, Math.ceil(text.length / 1_000_000)) })
  return chain(parseJson(text.startsWith('\uFEFF') ? text.slice(1) : text), (value) => {
    if (!isRecord(value) || value['format'] !== FORMAT) return fail({ code: 'document-foreign' })
    const { version } = value
    if (typeof version !== 'number') return malformed('version', 'is missing')
    if (version > VERSION) return fail({ code: 'document-newer', version, known: VERSION })
    if (version !== VERSION) return malformed('version', 'is unknown')
    const fault = fileFault(value)
    return fault === null ? ok(value as unknown as GlassFile) : malformed(fault, 'is not what it should be')
  })
}

const malformed = (place: string, reason: string): Outcome<never> =>
  fail({ code: 'document-malformed', place, reason })

type Shape = Readonly<Record<string, unknown>>
const isRecord = (value: unknown): value is Shape =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[1-8][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/iu
const INSTANT =
  /^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])T(?:[01]\d|2[0-3]):[0-5]\d:[0-5]\d(?:\.\d{1,6})?Z$/u

const isId = (value: unknown): boolean => typeof value === 'string' && UUID.test(value)
/** An instant on a day the calendar has. */
const isInstant = (value: unknown): boolean =>
  typeof value === 'string' && INSTANT.test(value) && dayFromNumber(dayNumberOf(value)) === value.slice(0, 10)
const isName = (value: unknown): boolean => typeof value === 'string' && value.length <= 200
const oneOf =
  (...names: readonly string[]) =>
  (value: unknown): boolean =>
    typeof value === 'string' && names.includes(value)
const orNull =
  (test: (value: unknown) => boolean) =>
  (value: unknown): boolean =>
    value === null || test(value)
const listOf =
  (test: (value: unknown) => boolean) =>
  (value: unknown): boolean =>
    Array.isArray(value) && value.length <= MOST_ANSWERS && value.every(test)
const exactly =
  (fields: Readonly<Record<string, (value: unknown) => boolean>>) =>
  (value: unknown): boolean =>
    isRecord(value) && firstFault(value, fields) === null

/** The first field that is missing, wrong, or none of the format's; null when all is well. */
function firstFault(
  value: Shape,
  fields: Readonly<Record<string, (value: unknown) => boolean>>,
): string | null {
  const wrong = Object.keys(fields).find((field) => fields[field]?.(value[field]) !== true)
  return wrong ?? Object.keys(value).find((field) => !Object.hasOwn(fields, field)) ?? null
}

const CHECK = {
  id: isId,
  at: isInstant,
  machineId: orNull(isId),
  seen: listOf(isName),
  ware: listOf(oneOf('glass', 'cutlery', 'plates')),
  spread: oneOf('all', 'one-zone', 'unknown'),
  since: oneOf('new', 'weeks', 'unknown'),
  answers: listOf(exactly({ evidence: isName, answer: oneOf('yes', 'no', 'unknown') })),
  confirmedCause: orNull(isName),
  confirmedAt: orNull(isInstant),
} satisfies Readonly<Record<keyof GlassCheck, (value: unknown) => boolean>>

function fileFault(value: Shape): string | null {
  const fault = firstFault(value, {
    format: oneOf(FORMAT),
    version: (version) => version === VERSION,
    siteId: isId,
    siteName: isName,
    check: isRecord,
  })
  if (fault !== null) return fault
  const check = value['check']
  const inside = isRecord(check) ? firstFault(check, CHECK) : 'check'
  return inside === null ? null : `check.${inside}`
}
