import { FORMATS, type DocumentKind, type Documents } from './formats'

/**
 * The text of a document: parts in the order of the schema whatever order they were set in, so that equal documents
 * are equal texts; two spaces per level, and what fits on one line stands on one line, so that a change shows as a
 * changed line.
 */
export function encode<K extends DocumentKind>(kind: K, document: Documents[K]): string {
  return `${print(FORMATS[kind].schema.parse(document), '', 0)}\n`
}

const WIDTH = 110

/** JSON in that layout; `used` is what already stands on the line. */
export function print(value: unknown, indent: string, used: number): string {
  const flat = flatText(value, WIDTH - indent.length - used)
  if (flat !== null) return flat
  const inner = `${indent}  `
  if (Array.isArray(value))
    return `[\n${value.map((item) => `${inner}${print(item, inner, 0)}`).join(',\n')}\n${indent}]`
  const lines = Object.entries(value as object).map(([key, part]) => {
    const label = `${JSON.stringify(key)}: `
    return `${inner}${label}${print(part, inner, label.length)}`
  })
  return `{\n${lines.join(',\n')}\n${indent}}`
}

/** One line, or null when it would be longer than `room`. Plain values always stand on their line. */
function flatText(value: unknown, room: number): string | null {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value)
  const list = Array.isArray(value)
  const parts: string[] = []
  let length = 4
  for (const [key, part] of list ? value.entries() : Object.entries(value)) {
    if (length > room) return null
    const text = flatText(part, room - length)
    if (text === null) return null
    const shown = list ? text : `${JSON.stringify(key)}: ${text}`
    parts.push(shown)
    length += shown.length + 2
  }
  if (parts.length === 0) return list ? '[]' : '{}'
  if (length - 2 > room) return null
  return list ? `[${parts.join(', ')}]` : `{ ${parts.join(', ')} }`
}
