/** What a chosen file turned out to be. */
export type FileText =
  | { readonly kind: 'text'; readonly text: string; readonly guessed: boolean }
  | { readonly kind: 'too-large'; readonly megabytes: number }
  | { readonly kind: 'line-too-long'; readonly line: number }
  | { readonly kind: 'workbook' }
  | { readonly kind: 'not-text' }

/** A list of deliveries is smaller than this by far; a larger file is refused before it is read. */
export const MOST_BYTES = 20_000_000

export async function textOf(file: Pick<Blob, 'size' | 'arrayBuffer' | 'slice'>): Promise<FileText> {
  if (file.size <= MOST_BYTES) return decodeBytes(new Uint8Array(await file.arrayBuffer()))
  const line = longLineOf(new Uint8Array(await file.slice(0, MOST_BYTES).arrayBuffer()), 10)
  return line === null ? tooLarge(file.size) : { kind: 'line-too-long', line }
}

/** What stands in the way of a pasted text, if anything does: its size, or the number of a line no list has. */
export function refusedText(text: string): Extract<FileText, { kind: 'too-large' | 'line-too-long' }> | null {
  if (text.length <= MOST_BYTES) return null
  const line = longLineOf(text, '\n')
  return line === null ? tooLarge(text.length) : { kind: 'line-too-long', line }
}

const tooLarge = (size: number): { readonly kind: 'too-large'; readonly megabytes: number } => ({
  kind: 'too-large',
  megabytes: Math.ceil(size / 1_000_000),
})

/** No line of a list is as long as this. */
const LONGEST_LINE = 1_000_000

interface Searched<T> {
  readonly length: number
  indexOf(what: T, from: number): number
}

/** The number of the first line that is far too long, from 1; null when none is. */
function longLineOf<T>(text: Searched<T>, lineBreak: T): number | null {
  let from = 0
  for (let line = 1; from < text.length; line += 1) {
    const end = text.indexOf(lineBreak, from)
    if ((end === -1 ? text.length : end) - from > LONGEST_LINE) return line
    if (end === -1) return null
    from = end + 1
  }
  return null
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
