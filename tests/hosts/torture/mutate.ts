/** Ways a text gets damaged: by a disk, a transfer, an editor, or somebody who means harm. */
export function mutated(text: string, random: () => number): string {
  const at = Math.floor(random() * text.length)
  const length = 1 + Math.floor(random() * 40)
  const from = Math.floor(random() * text.length)
  switch (Math.floor(random() * 12)) {
    case 0:
      return text.slice(0, at)
    case 1:
      return text.slice(0, at) + text.slice(at + length)
    case 2:
      return text.slice(0, at) + text.slice(from, from + length) + text.slice(at)
    case 3:
      return flipBit(text, at, random)
    case 4:
      return text.slice(0, at) + SIGNS[Math.floor(random() * SIGNS.length)] + text.slice(at + 1)
    case 5:
      return replaceToken(text, random, /"[^"]*"/g, WORDS)
    case 6:
      return replaceToken(text, random, /\b(?:null|true|false|\d+)\b/g, VALUES)
    case 7:
      return replaceToken(text, random, /"[A-Za-z]+":/g, KEYS)
    case 8:
      return text.slice(0, at) + '['.repeat(1 + Math.floor(random() * 5_000)) + text.slice(at)
    case 9:
      return swapLines(text, random)
    case 10:
      return text.slice(0, at) + 'x'.repeat(Math.floor(random() * 200_000)) + text.slice(at)
    default:
      return mutated(mutated(text, random), random)
  }
}

const SIGNS = [
  '{',
  '}',
  '[',
  ']',
  '"',
  ',',
  ':',
  '\\',
  '\u0000',
  '\u202E',
  '\uFEFF',
  '\uD800',
  '😀',
  '-',
  'e',
  '.',
]
const WORDS = [
  '"../../etc/passwd"',
  '"__proto__"',
  '"CON"',
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
const KEYS = [
  '"__proto__":',
  '"constructor":',
  '"id":',
  '"version":',
  '"site":',
  '"":',
  '"toString":',
  '"length":',
]

function flipBit(text: string, at: number, random: () => number): string {
  const code = text.charCodeAt(at) ^ (1 << Math.floor(random() * 8))
  return text.slice(0, at) + String.fromCharCode(code) + text.slice(at + 1)
}

function replaceToken(text: string, random: () => number, token: RegExp, by: readonly string[]): string {
  const found = [...text.matchAll(token)]
  const one = found[Math.floor(random() * found.length)]
  if (one === undefined) return text
  const put = by[Math.floor(random() * by.length)] ?? ''
  return text.slice(0, one.index) + put + text.slice(one.index + one[0].length)
}

function swapLines(text: string, random: () => number): string {
  const lines = text.split('\n')
  const a = Math.floor(random() * lines.length)
  const b = Math.floor(random() * lines.length)
  const first = lines[a] ?? ''
  lines[a] = lines[b] ?? ''
  lines[b] = first
  return lines.join('\n')
}
