const WIDTH = 110

/**
 * JSON with two spaces per level, where what fits on one line stands on one line, so that a change shows as a changed
 * line.
 */
export function layOut(value: unknown): string {
  const layout = new Layout()
  layout.write(value, '', 0)
  return layout.pieces.join('')
}

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
      this.write((value as Group)[key], inner, label.length)
      before = ',\n'
    }
    this.pieces.push('\n', indent, isList ? ']' : '}')
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
