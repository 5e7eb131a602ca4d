import { readFileSync, statSync } from 'node:fs'
import { DOCUMENT_LIMITS, megabytes } from '#core/documents/limits'
import { fail, ok, type Outcome } from '#core/outcome'
import { errorCode } from './not-saved'

/**
 * A whole file as text. Too large, not UTF-8, or not readable is a problem; a missing file is null. Bytes are decoded
 * strictly: the usual lenient way would turn damaged letters of a name into replacement signs and save them so.
 */
export function readText(path: string): Outcome<string> | null {
  try {
    const { size } = statSync(path)
    // UTF-8 takes up to three bytes for what counts as one character of the limit
    if (size > DOCUMENT_LIMITS.characters * 3)
      return fail({ code: 'document-too-large', megabytes: megabytes(size) })
    return decodeUtf8(readFileSync(path))
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return null
    return fail({ code: 'unavailable', what: `the file cannot be read (${errorCode(error)})` })
  }
}

export function decodeUtf8(bytes: Uint8Array): Outcome<string> {
  try {
    return ok(new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes))
  } catch {
    return fail({
      code: 'document-malformed',
      place: '',
      reason: 'is not UTF-8 text, the encoding this program writes',
    })
  }
}
