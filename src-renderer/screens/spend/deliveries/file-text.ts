/** What a chosen file turned out to be. */
export type FileText =
  | { readonly kind: 'text'; readonly text: string; readonly guessed: boolean }
  | { readonly kind: 'too-large'; readonly megabytes: number }
  | { readonly kind: 'workbook' }
  | { readonly kind: 'not-text' }

/** A list of deliveries is smaller than this by far; a larger file is refused before it is read. */
export const MOST_BYTES = 20_000_000

export async function textOf(file: Pick<Blob, 'size' | 'arrayBuffer'>): Promise<FileText> {
  if (file.size > MOST_BYTES) return { kind: 'too-large', megabytes: Math.ceil(file.size / 1_000_000) }
  return decodeBytes(new Uint8Array(await file.arrayBuffer()))
}

/**
 * Text out of bytes: by its byte order mark, else as UTF-8, else as the usual encoding of older Western European
 * spreadsheets (`guessed`, because bytes alone do not say so).
 */
export function decodeBytes(bytes: Uint8Array): FileText {
  const begins = (...start: readonly number[]): boolean => start.every((byte, at) => bytes[at] === byte)
  if (begins(0x50, 0x4b, 0x03, 0x04) || begins(0xd0, 0xcf, 0x11, 0xe0)) return { kind: 'workbook' }
  if (begins(0xff, 0xfe)) return read(bytes, 'utf-16le')
  if (begins(0xfe, 0xff)) return read(bytes, 'utf-16be')
  if (bytes.includes(0)) return { kind: 'not-text' }
  try {
    return { kind: 'text', text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), guessed: false }
  } catch {
    return { kind: 'text', text: new TextDecoder('windows-1252').decode(bytes), guessed: true }
  }
}

const read = (bytes: Uint8Array, encoding: string): FileText => ({
  kind: 'text',
  text: new TextDecoder(encoding).decode(bytes),
  guessed: false,
})
