import { fail, ok, type Outcome } from '../outcome'

type Json = Readonly<Record<string, unknown>>

/** One step from a version to the next. Pure, and never changed once released: old files are read with it for ever. */
export type MigrationStep = (document: Json) => Json

/**
 * Takes a document of an older version through every step up to `known`. `steps[0]` leads from version 1 to 2. The step
 * gives the content; the version number is written here. A newer document is refused unread.
 */
export function migrate(
  document: Json,
  known: number,
  steps: readonly MigrationStep[],
): Outcome<{ readonly document: Json; readonly from: number }> {
  const from = document['version']
  if (typeof from !== 'number' || !Number.isInteger(from) || from < 1)
    return fail({ code: 'document-malformed', place: 'version', reason: 'is not a version number' })
  if (from > known) return fail({ code: 'document-newer', version: from, known })
  let current = document
  for (let version = from; version < known; version += 1) {
    const step = steps[version - 1]
    if (step === undefined) throw new Error(`no step from version ${version}`)
    current = { ...step(current), version: version + 1 }
  }
  return ok({ document: current, from })
}
