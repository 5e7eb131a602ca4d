import * as fc from 'fast-check'

/**
 * Ways a text gets damaged: by a disk, a transfer, an editor, or somebody who means harm. `at` and `from` are places as
 * shares of the text, so that one damage can be done to any text, and fast-check can make it smaller.
 */
export type Damage =
  | { readonly kind: 'cut-short'; readonly at: number }
  | { readonly kind: 'left-out'; readonly at: number; readonly length: number }
  | { readonly kind: 'repeated'; readonly at: number; readonly from: number; readonly length: number }
  | { readonly kind: 'bit-flipped'; readonly at: number; readonly bit: number }
  | { readonly kind: 'sign-replaced'; readonly at: number; readonly by: string }
  | { readonly kind: 'word-replaced'; readonly at: number; readonly by: string }
  | { readonly kind: 'value-replaced'; readonly at: number; readonly by: string }
  | { readonly kind: 'key-replaced'; readonly at: number; readonly by: string }
  | { readonly kind: 'nested'; readonly at: number; readonly depth: number }
  | { readonly kind: 'lines-swapped'; readonly at: number; readonly from: number }
  | { readonly kind: 'grown'; readonly at: number; readonly length: number }
  | { readonly kind: 'typed-into'; readonly at: number; readonly by: string }

const SIGNS = ['{', '}', '[', ']', '"', ',', ':', '\\', '\u0000', '\u202E', '\uFEFF', '\uD800', '😀']
const WORDS = [
  '"../../etc/passwd"',
  '"__proto__"',
  '"CON"',
  '"aux."',
  '"\\u0000"',
  '"\u202Etxt.exe"',
  '"1e309"',
  '"NaN"',
  '"-0"',
  '"99999999999999999999"',
  '""',
  'null',
  '{}',
  '[]',
  '1e999',
  `"${'é'.repeat(10_000)}"`,
]
const VALUES = ['null', '-1', '1e308', '1e999', '0.1', 'true', '"x"', '[]', '{}', '2', '999999999999']
const KEYS = ['__proto__', 'constructor', 'id', 'version', 'site', '', 'toString', 'length'].map(
  (key) => `"${key}":`,
)

const at = fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true })
const length = fc.integer({ min: 1, max: 40 })

const damage: fc.Arbitrary<Damage> = fc.oneof(
  fc.record({ kind: fc.constant('cut-short'), at }),
  fc.record({ kind: fc.constant('left-out'), at, length }),
  fc.record({ kind: fc.constant('repeated'), at, from: at, length }),
  fc.record({ kind: fc.constant('bit-flipped'), at, bit: fc.nat(7) }),
  fc.record({ kind: fc.constant('sign-replaced'), at, by: fc.constantFrom(...SIGNS) }),
  fc.record({ kind: fc.constant('word-replaced'), at, by: fc.constantFrom(...WORDS) }),
  fc.record({ kind: fc.constant('value-replaced'), at, by: fc.constantFrom(...VALUES) }),
  fc.record({ kind: fc.constant('key-replaced'), at, by: fc.constantFrom(...KEYS) }),
  fc.record({ kind: fc.constant('nested'), at, depth: fc.integer({ min: 1, max: 5_000 }) }),
  fc.record({ kind: fc.constant('lines-swapped'), at, from: at }),
  fc.record({ kind: fc.constant('grown'), at, length: fc.nat(200_000) }),
  fc.record({ kind: fc.constant('typed-into'), at, by: fc.string({ unit: 'binary', maxLength: 12 }) }),
)

/** One damage, or a few on top of each other. */
export const damages: fc.Arbitrary<readonly Damage[]> = fc.array(damage, {
  minLength: 1,
  maxLength: 3,
  size: 'max',
})

export const damaged = (text: string, list: readonly Damage[]): string => list.reduce(done, text)

function done(text: string, one: Damage): string {
  const place = Math.floor(one.at * text.length)
  const put = (by: string, instead = 0): string => text.slice(0, place) + by + text.slice(place + instead)
  switch (one.kind) {
    case 'cut-short':
      return text.slice(0, place)
    case 'left-out':
      return put('', one.length)
    case 'repeated': {
      const from = Math.floor(one.from * text.length)
      return put(text.slice(from, from + one.length))
    }
    case 'bit-flipped':
      return put(String.fromCharCode(text.charCodeAt(place) ^ (1 << one.bit)), 1)
    case 'sign-replaced':
      return put(one.by, 1)
    case 'word-replaced':
      return tokenReplaced(text, one, /"[^"]*"/g)
    case 'value-replaced':
      return tokenReplaced(text, one, /\b(?:null|true|false|\d+)\b/g)
    case 'key-replaced':
      return tokenReplaced(text, one, /"[A-Za-z]+":/g)
    case 'nested':
      return put('['.repeat(one.depth))
    case 'lines-swapped':
      return linesSwapped(text, one)
    case 'grown':
      return put('x'.repeat(one.length))
    case 'typed-into':
      return put(one.by)
  }
}

function tokenReplaced(
  text: string,
  { at, by }: { readonly at: number; readonly by: string },
  token: RegExp,
): string {
  const found = [...text.matchAll(token)]
  const one = found[Math.floor(at * found.length)]
  return one === undefined ? text : text.slice(0, one.index) + by + text.slice(one.index + one[0].length)
}

function linesSwapped(text: string, { at, from }: { readonly at: number; readonly from: number }): string {
  const lines = text.split('\n')
  const a = Math.floor(at * lines.length)
  const b = Math.floor(from * lines.length)
  const first = lines[a] ?? ''
  lines[a] = lines[b] ?? ''
  lines[b] = first
  return lines.join('\n')
}
