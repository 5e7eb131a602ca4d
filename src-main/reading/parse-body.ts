import { parseJson } from '#core/documents/parse-json'
import { fail, type Outcome } from '#core/outcome'
import { decodeUtf8 } from '../storage/read-text'

/** JSON as strict as in documents: UTF-8, no key twice, no prototype names, not nested without end. */
export function parseBody(bytes: Buffer): Outcome<unknown> {
  const text = decodeUtf8(bytes)
  const value = text.ok ? parseJson(text.value) : text
  if (value.ok) return value
  return fail({ code: 'bad-request', place: 'body', reason: 'is not the JSON of a call' })
}
