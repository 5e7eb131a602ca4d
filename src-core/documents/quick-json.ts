import { DOCUMENT_LIMITS, PROTOTYPE_NAMES } from './limits'

/**
 * JSON by the engine's own reader, several times as quick as ours, for every text that gives no cause to look closer.
 * Null for any other, right or wrong: it goes to the reader of `parse-json.ts`, which decides and names the place.
 *
 * The engine keeps the last of two equal keys. So the keys of the text are counted, and those of the value: where one
 * was lost, the counts differ.
 */
export function quickJson(text: string): { readonly value: unknown } | null {
  const keys = BREAKS_OFF.has(text.at(-1)) ? null : keysAtMost(text)
  if (keys === null) return null
  try {
    const value: unknown = JSON.parse(text)
    return countKeys(value, 0) === keys ? { value } : null
  } catch {
    return null
  }
}

/** A text that ends so is cut short, or made to nest a million deep: the engine would read all of it first. */
const BREAKS_OFF: ReadonlySet<string | undefined> = new Set(['[', '{', ':', ','])

const QUOTE = 34

/**
 * How many colons follow a quote at once: every key, and perhaps a text that holds those two signs. Null when a colon
 * might follow a key after a space, since that key would not be counted.
 */
function keysAtMost(text: string): number | null {
  let keys = 0
  for (let at = text.indexOf(':'); at >= 0; at = text.indexOf(':', at + 1)) {
    let before = at - 1
    while (isSpace(text.charCodeAt(before))) before -= 1
    if (text.charCodeAt(before) !== QUOTE) continue
    if (before < at - 1) return null
    keys += 1
  }
  return keys
}

const isSpace = (sign: number): boolean => sign === 32 || sign === 10 || sign === 13 || sign === 9

/** Keys of a value, at every depth; NaN, equal to no count, when it nests too deep or names a prototype member. */
function countKeys(node: unknown, depth: number): number {
  if (depth > DOCUMENT_LIMITS.depth) return Number.NaN
  if (typeof node !== 'object' || node === null) return 0
  let count = 0
  if (Array.isArray(node)) {
    for (const item of node) count += countKeys(item, depth + 1)
    return count
  }
  for (const key in node) {
    if (PROTOTYPE_NAMES.has(key)) return Number.NaN
    count += 1 + countKeys((node as Readonly<Record<string, unknown>>)[key], depth + 1)
  }
  return count
}
