import { fail, ok, type Outcome } from '../outcome'
import { DOCUMENT_LIMITS, PROTOTYPE_NAMES } from './limits'
import { quickJson } from './quick-json'

/**
 * Reads JSON (RFC 8259) and says where it goes wrong. Stricter than JSON.parse in three ways: a key that stands twice
 * in one object is refused (RFC 8259 section 4 leaves its meaning open, and the last one would silently win), so is a
 * key that names a prototype member, and so is nesting deeper than the limit.
 */
export function parseJson(text: string): Outcome<unknown> {
  const quick = quickJson(text)
  return quick === null ? readJson(text) : ok(quick.value)
}

/** The same, sign by sign: as slow as it is exact about the place of a fault. */
export function readJson(text: string): Outcome<unknown> {
  try {
    return ok(new Reader(text).document())
  } catch (error) {
    if (error instanceof Fault) return fail(error.problem)
    throw error
  }
}

class Fault extends Error {
  constructor(
    readonly problem:
      | { readonly code: 'document-not-json'; readonly place: string }
      | { readonly code: 'document-malformed'; readonly place: string; readonly reason: string },
  ) {
    super()
  }
}

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y
const SPACE = /[ \t\n\r]*/y
// everything up to the first quote, backslash or control character
// eslint-disable-next-line no-control-regex -- control signs are what is looked for
const PLAIN = /[^"\\\u0000-\u001f]*/y
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y

class Reader {
  #at = 0
  constructor(readonly text: string) {}

  document(): unknown {
    const value = this.#value(0)
    this.#space()
    if (this.#at < this.text.length) throw this.#notJson()
    return value
  }

  #value(depth: number): unknown {
    if (depth > DOCUMENT_LIMITS.depth)
      throw this.#malformed('is nested deeper than any document of this program')
    this.#space()
    const first = this.text[this.#at]
    if (first === '{') return this.#object(depth)
    if (first === '[') return this.#array(depth)
    if (first === '"') return this.#string()
    if (first === 't') return this.#word('true', true)
    if (first === 'f') return this.#word('false', false)
    if (first === 'n') return this.#word('null', null)
    return Number(this.#match(NUMBER, true))
  }

  #object(depth: number): Record<string, unknown> {
    this.#at += 1
    const object: Record<string, unknown> = {}
    if (this.#take('}')) return object
    do {
      this.#space()
      const start = this.#at
      const key = this.#string()
      if (PROTOTYPE_NAMES.has(key))
        throw this.#malformed(`has a part named "${key}", which no document uses`, start)
      if (Object.hasOwn(object, key)) throw this.#malformed(`has the part "${key}" twice`, start)
      this.#expect(':')
      object[key] = this.#value(depth + 1)
    } while (this.#take(','))
    this.#expect('}')
    return object
  }

  #array(depth: number): unknown[] {
    this.#at += 1
    const array: unknown[] = []
    if (this.#take(']')) return array
    do array.push(this.#value(depth + 1))
    while (this.#take(','))
    this.#expect(']')
    return array
  }

  #string(): string {
    if (this.text[this.#at] !== '"') throw this.#notJson()
    const start = this.#at
    this.#at += 1
    let escaped = false
    for (;;) {
      this.#match(PLAIN, false)
      if (this.text[this.#at] === '"') break
      this.#match(ESCAPE, true)
      escaped = true
    }
    this.#at += 1
    const quoted = this.text.slice(start, this.#at)
    return escaped ? (JSON.parse(quoted) as string) : quoted.slice(1, -1)
  }

  #word<T>(word: string, value: T): T {
    if (!this.text.startsWith(word, this.#at)) throw this.#notJson()
    this.#at += word.length
    return value
  }

  #match(pattern: RegExp, needed: boolean): string {
    pattern.lastIndex = this.#at
    const found = pattern.exec(this.text)?.[0] ?? ''
    if (needed && found === '') throw this.#notJson()
    this.#at += found.length
    return found
  }

  #space(): void {
    this.#match(SPACE, false)
  }

  #take(sign: string): boolean {
    this.#space()
    if (this.text[this.#at] !== sign) return false
    this.#at += 1
    return true
  }

  #expect(sign: string): void {
    if (!this.#take(sign)) throw this.#notJson()
  }

  #place(at: number): string {
    const before = this.text.slice(0, at)
    const line = before.split('\n').length
    return `line ${line}, column ${at - before.lastIndexOf('\n')}`
  }

  #notJson(): Fault {
    return new Fault({ code: 'document-not-json', place: this.#place(this.#at) })
  }

  #malformed(reason: string, at = this.#at): Fault {
    return new Fault({ code: 'document-malformed', place: this.#place(at), reason })
  }
}
