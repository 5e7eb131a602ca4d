import { PLAIN_DECIMAL } from '../units/read'

/** One cell: words, a number in canonical decimal form, or nothing. Anything computed is a number, anything typed is text. */
export type CsvCell =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'number'; readonly value: string }
  | null

export const text = (words: string): CsvCell => ({ kind: 'text', text: words })

/** A number cell; a value that is not a plain decimal becomes text, and so cannot pose as a number. */
export const figure = (value: string): CsvCell =>
  PLAIN_DECIMAL.test(value) ? { kind: 'number', value } : text(value)

/** How a country's spreadsheets read a file of values: where the decimal sign is a comma, cells are parted by semicolons. */
export interface CsvStyle {
  readonly separator: ',' | ';'
  readonly decimalSign: '.' | ','
}

export const csvStyle = (decimalSign: 'point' | 'comma'): CsvStyle =>
  decimalSign === 'comma' ? { separator: ';', decimalSign: ',' } : { separator: ',', decimalSign: '.' }

/**
 * What a spreadsheet would take for the beginning of a formula, also behind blanks and in its wide forms, or a control
 * character that parts cells. Source: the list of the Open Worldwide Application Security Project, "CSV Injection":
 * equals, plus, minus, at, tab, carriage return; the line feed and the wide forms are added from its remarks.
 */
const FORMULA = /^[\s\p{Cc}\p{Cf}]*[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r\n]/u

/** The mark in front of a text that would be taken for a formula: a spreadsheet then shows it as text. */
export const TEXT_MARK = "'"

/**
 * A file of values (RFC 4180: quoted where needed, quotes doubled, lines parted by CR LF), begun with a byte order mark so
 * that spreadsheets read it as UTF-8. No text cell can be taken for a formula.
 */
export function toCsv(
  head: readonly string[],
  rows: readonly (readonly CsvCell[])[],
  style: CsvStyle,
): string {
  const lines = [head.map(text), ...rows].map((row) =>
    row.map((cell) => written(cell, style)).join(style.separator),
  )
  return `\ufeff${lines.join('\r\n')}\r\n`
}

function written(cell: CsvCell, style: CsvStyle): string {
  if (cell === null) return ''
  if (cell.kind === 'number') {
    const value = cell.value.replace('.', style.decimalSign)
    return value.includes(style.separator) ? `"${value}"` : value
  }
  const safe = FORMULA.test(cell.text) ? `${TEXT_MARK}${cell.text}` : cell.text
  return /[",;\t\r\n]|^\s|\s$/u.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}

/** A text as it was before `toCsv` marked it: for files of ours that come back. */
export const withoutTextMark = (cell: string): string =>
  cell.startsWith(TEXT_MARK) && FORMULA.test(cell.slice(1)) ? cell.slice(1) : cell
