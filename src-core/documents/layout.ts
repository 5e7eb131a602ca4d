const WIDTH = 110

/**
 * JSON with two spaces per level, where what fits on one line stands on one line, so that a change shows as a changed
 * line. `frozen`: the value cannot change any more, at any depth. The text of each item of its outer lists is then kept
 * with the item: of a site saved after an edit, all visits but one are what they were.
 */
export const layOut = (value: unknown, how: { readonly frozen?: boolean } = {}): string =>
  layOutParts(value, how).join('')

/** The same in pieces: the text of a kept item is one of them, and the very same string the next time. */
export function layOutParts(
  value: unknown,
  { frozen = false }: { readonly frozen?: boolean } = {},
): readonly string[] {
  const layout = new Layout(frozen)
  layout.write(value, '', 0)
  return layout.pieces
}

const kept = new WeakMap<object, { readonly indent: string; readonly text: string }>()

/** A part on one line, and the room a line must have for it. */
interface Flat {
  readonly text: string
  readonly room: number
}

type Group = Readonly<Record<string, unknown>>

class Layout {
  readonly pieces: string[] = []
  /** By group or list; null where no line is long enough. Each is tried once, not anew for every level above it. */
  readonly #flat = new Map<object, Flat | null>()
  readonly #labels = new Map<string, string>()
  #keeps: boolean

  constructor(keeps: boolean) {
    this.#keeps = keeps
  }

  /** `used`: what already stands on the line. */
  write(value: unknown, indent: string, used: number): void {
    const flat = this.#flatOf(value)
    if (flat !== null && flat.room <= WIDTH - indent.length - used) {
      this.pieces.push(flat.text)
      return
    }
    const isList = Array.isArray(value)
    const inner = `${indent}  `
    let before = isList ? '[\n' : '{\n'
    for (const key in value as Group) {
      const label = isList ? '' : this.#label(key)
      this.pieces.push(before, inner, label)
      const part = (value as Group)[key]
      if (isList && this.#keeps && typeof part === 'object' && part !== null)
        this.pieces.push(this.#keptText(part, inner))
      else this.write(part, inner, label.length)
      before = ',\n'
    }
    this.pieces.push('\n', indent, isList ? ']' : '}')
  }

  #keptText(item: object, indent: string): string {
    const known = kept.get(item)
    if (known?.indent === indent) return known.text
    const from = this.pieces.length
    this.#keeps = false
    this.write(item, indent, 0)
    this.#keeps = true
    const text = this.pieces.splice(from).join('')
    kept.set(item, { indent, text })
    return text
  }

  /** A plain value stands on its line however long it is. */
  #flatOf(value: unknown): Flat | null {
    if (typeof value !== 'object' || value === null)
      return { text: JSON.stringify(value), room: Number.NEGATIVE_INFINITY }
    const known = this.#flat.get(value)
    if (known !== undefined) return known
    const flat = Array.isArray(value) ? this.#list(value) : this.#group(value as Group)
    this.#flat.set(value, flat)
    return flat
  }

  #list(list: readonly unknown[]): Flat | null {
    const line = new Line()
    for (const item of list) if (!line.add('', this.#flatOf(item))) return null
    return line.between('[', ']', '[]')
  }

  #group(group: Group): Flat | null {
    const line = new Line()
    for (const key in group) if (!line.add(this.#label(key), this.#flatOf(group[key]))) return null
    return line.between('{ ', ' }', '{}')
  }

  #label(key: string): string {
    const known = this.#labels.get(key)
    if (known !== undefined) return known
    const label = `${JSON.stringify(key)}: `
    this.#labels.set(key, label)
    return label
  }
}

/** Parts side by side. Both brackets are reckoned with their spaces, also where a list has none. */
class Line {
  #text = ''
  #length = 4
  #room = Number.NEGATIVE_INFINITY

  /** False once no line would be long enough. */
  add(label: string, part: Flat | null): boolean {
    if (part === null) return false
    this.#room = Math.max(this.#room, this.#length + part.room)
    this.#text = this.#length === 4 ? label + part.text : `${this.#text}, ${label}${part.text}`
    this.#length += label.length + part.text.length + 2
    return this.#length - 2 <= WIDTH
  }

  between(open: string, close: string, empty: string): Flat {
    return this.#length === 4
      ? { text: empty, room: this.#room }
      : { text: open + this.#text + close, room: Math.max(this.#room, this.#length - 2) }
  }
}
