import type { IncomingMessage } from 'node:http'
import { DOCUMENT_LIMITS } from '#core/documents/limits'

const SMALL = 1_000_000
/**
 * These carry whole documents: a site of many years, or a list that lost an item in its middle and is sent again. As
 * JSON text inside JSON, signs may be escaped, so twice the largest document.
 */
const LARGE = DOCUMENT_LIMITS.characters * 2
const WITH_DOCUMENTS: ReadonlySet<string> = new Set([
  'site.create',
  'site.edit',
  'site.import',
  'site.compare',
  'library.edit',
])

export const bodyLimit = (method: string): number => (WITH_DOCUMENTS.has(method) ? LARGE : SMALL)

/** The body's bytes, or null as soon as it is known to be larger than the limit. */
export async function readBody(request: IncomingMessage, limit: number): Promise<Buffer | null> {
  if (Number(request.headers['content-length'] ?? '0') > limit) return null
  const parts: Buffer[] = []
  let size = 0
  // leaving early must not cut the connection, or the refusal would not arrive
  for await (const part of request.iterator({ destroyOnReturn: false }) as AsyncIterable<Buffer>) {
    size += part.length
    if (size > limit) return null
    parts.push(part)
  }
  return Buffer.concat(parts)
}
