import * as fc from 'fast-check'
import Papa from 'papaparse'
import { describe, expect, it } from 'vitest'
import { csvStyle, figure, text, toCsv, withoutTextMark } from '#core/spend/csv'

const cellsOf = (file: string, delimiter: string): readonly string[][] =>
  Papa.parse<string[]>(file.replace(/^\ufeff/u, ''), { delimiter, skipEmptyLines: false }).data.slice(0, -1)

describe('a file of values', () => {
  it('parts cells by commas where the decimal sign is a point, by semicolons where it is a comma', () => {
    const rows = [[text('Lantern Lane Cafe'), figure('32.98'), null]]
    expect(toCsv(['Site', 'Cost', 'Note'], rows, csvStyle('point'))).toBe(
      '\ufeffSite,Cost,Note\r\nLantern Lane Cafe,32.98,\r\n',
    )
    expect(toCsv(['Site', 'Cost', 'Note'], rows, csvStyle('comma'))).toBe(
      '\ufeffSite;Cost;Note\r\nLantern Lane Cafe;32,98;\r\n',
    )
  })

  /** Source: RFC 4180, section 2, rules 5 to 7: quotes around, quotes doubled. */
  it('quotes separators, quotes and line breaks as the standard for it says', () => {
    expect(toCsv(['a'], [[text('Bar "Low", back\nroom')]], csvStyle('point'))).toBe(
      '\ufeffa\r\n"Bar ""Low"", back\nroom"\r\n',
    )
  })

  it('leaves numbers below zero as numbers', () => {
    expect(toCsv(['Change'], [[figure('-5.20')]], csvStyle('point'))).toContain('\n-5.20\r')
  })

  /** Source: Open Worldwide Application Security Project, "CSV Injection": what begins a formula. */
  it.each([
    '=1+1',
    '=HYPERLINK("http://example.invalid","click")',
    '+1',
    '-1+2',
    '@SUM(A1)',
    '\t=1',
    '\r=1',
    '\n=1',
    ' =1',
    '\u00a0=1',
    '\u200b=1',
    '\uff1d1+1',
    '\uff0b1',
    '\uff0d1',
    '\uff201',
    '=cmd|" /C calc"!A0',
  ])('never lets %j begin a formula', (hostile) => {
    for (const style of [csvStyle('point'), csvStyle('comma')]) {
      const cell = cellsOf(toCsv(['Name'], [[text(hostile)]], style), style.separator)[1]?.[0]
      expect(cell?.startsWith("'")).toBe(true)
      expect(withoutTextMark(cell ?? '')).toBe(hostile)
    }
  })

  it('does not take a number’s place for words that only look like one', () => {
    expect(toCsv(['x'], [[figure('1e3'), figure('=2')]], csvStyle('point'))).toContain("1e3,'=2")
  })

  it('comes back as it went out, whatever was typed, in both kinds of country', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.string({ unit: 'binary' }), { minLength: 2, maxLength: 2 }), { maxLength: 8 }),
        fc.constantFrom('point' as const, 'comma' as const),
        (rows, sign) => {
          const style = csvStyle(sign)
          const file = toCsv(
            ['a', 'b'],
            rows.map((row) => row.map(text)),
            style,
          )
          const back = cellsOf(file, style.separator).slice(1)
          expect(back.map((row) => row.map(withoutTextMark))).toEqual(rows)
          for (const cell of back.flat()) expect(cell).not.toMatch(/^[=+\-@\t\r\n]/u)
        },
      ),
      { numRuns: 200 },
    )
  }, 60_000)
})
