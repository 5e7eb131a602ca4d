import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formatPlaces } from '#core/units/format'
import { parseEntry, parseNumber } from '#core/units/parse'

const point = { field: 'f', decimalSign: 'point' } as const
const comma = { field: 'f', decimalSign: 'comma' } as const

describe('parseNumber reads what people type and never guesses', () => {
  it.each([
    ['1.25', '1.25', '1.25'],
    ['1,25', '1.25', '1.25'],
    ['.5', '0.5', '0.5'],
    ['0.', '0', '0'],
    ['12.', '12', '12'],
    ['007', '7', '7'],
    ['1.50', '1.50', '1.50'],
    ['  3 ', '3', '3'],
    ['-4', '-4', '-4'],
    ['−4,5', '-4.5', '-4.5'],
    ['+2', '2', '2'],
    ['0,123', '0.123', '0.123'],
    ['1234,567', '1234.567', '1234.567'],
    ['1234.567', '1234.567', '1234.567'],
    ['1.2345', '1.2345', '1.2345'],
  ])('%s', (text, withPoint, withComma) => {
    expect(parseNumber(text, point)).toEqual({ ok: true, value: withPoint })
    expect(parseNumber(text, comma)).toEqual({ ok: true, value: withComma })
  })

  it('asks about 1,234 where the decimal sign is a point, and about 1.234 where it is a comma', () => {
    expect(parseNumber('1,234', point)).toEqual({
      ok: false,
      problem: { code: 'number-ambiguous', field: 'f', text: '1,234', readings: ['1.234', '1234'] },
    })
    expect(parseNumber('-1.234', comma)).toEqual({
      ok: false,
      problem: { code: 'number-ambiguous', field: 'f', text: '-1.234', readings: ['-1.234', '-1234'] },
    })
    expect(parseNumber('1.234', point)).toEqual({ ok: true, value: '1.234' })
    expect(parseNumber('1,234', comma)).toEqual({ ok: true, value: '1.234' })
  })

  it.each([
    '1.234,5',
    '1,234,567',
    '1 234',
    '٣',
    '0x10',
    '1e3',
    '1_000',
    'Infinity',
    'NaN',
    'abc',
    '.',
    ',',
    '-',
    '--1',
    '1..2',
    '1234567890123456',
    '0.1234567890123456',
  ])('refuses %s', (text) => {
    expect(parseNumber(text, point)).toMatchObject({ ok: false, problem: { code: 'number-unreadable' } })
    expect(parseNumber(text, comma)).toMatchObject({ ok: false, problem: { code: 'number-unreadable' } })
  })

  it('calls an empty field missing, not wrong', () => {
    expect(parseNumber('  ', point)).toMatchObject({ ok: false, problem: { code: 'number-missing' } })
  })

  it('reads back every number the program shows, in both signs', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -999_999_999, max: 999_999_999 }),
        fc.integer({ min: 0, max: 6 }),
        fc.constantFrom('point' as const, 'comma' as const),
        (digits, places, decimalSign) => {
          const value = digits / 10 ** places
          const read = parseNumber(formatPlaces(value, places, decimalSign), { field: 'f', decimalSign })
          expect(read.ok && Number(read.value)).toBe(value === 0 ? 0 : value)
        },
      ),
    )
  })

  it('never throws and never lets a value through that is not a plain decimal', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 20 }), (text) => {
        const read = parseNumber(text, point)
        if (read.ok) expect(read.value).toMatch(/^-?\d{1,15}(\.\d{1,15})?$/)
      }),
      { numRuns: 2000 },
    )
  })
})

describe('parseEntry takes a unit typed after the number', () => {
  const volume = { field: 'f', units: ['mL', 'L', 'fl-oz-us', 'gal-us'], decimalSign: 'point' } as const

  it.each([
    ['3.5 fl oz', '3.5', 'fl-oz-us'],
    ['2.5 mL', '2.5', 'mL'],
    ['2,5ml', '2.5', 'mL'],
    ['1 US gal', '1', 'gal-us'],
    ['5 litres', '5', 'L'],
    ['12', '12', 'mL'],
  ])('%s', (text, value, unit) => {
    expect(parseEntry(text, volume)).toEqual({ ok: true, value: { value, unit } })
  })

  it('takes the fluid ounce of the country the site works in', () => {
    const imperial = { field: 'f', units: ['fl-oz-imp', 'mL'], decimalSign: 'point' } as const
    expect(parseEntry('3.5 fl oz', imperial)).toEqual({
      ok: true,
      value: { value: '3.5', unit: 'fl-oz-imp' },
    })
  })

  it('says what it would understand when the unit measures something else', () => {
    expect(parseEntry('5 kg', volume)).toEqual({
      ok: false,
      problem: {
        code: 'unit-unknown',
        field: 'f',
        text: 'kg',
        expected: ['mL', 'L', 'US fl oz', 'US gal'],
      },
    })
  })

  it.each([
    ['7 mg/L CaCO3', 'mg/L-CaCO3'],
    ['7 gpg', 'gpg'],
    ['7 °dH', 'deg-dH'],
  ] as const)('hardness: %s', (text, unit) => {
    const units = ['mg/L-CaCO3', 'gpg', 'deg-dH'] as const
    expect(parseEntry(text, { field: 'f', units, decimalSign: 'comma' })).toEqual({
      ok: true,
      value: { value: '7', unit },
    })
  })

  it('typing step by step is never an exception', () => {
    for (const text of ['0', '0.', '0.5', '0.5 ', '0.5 m', '0.5 mL'])
      expect(() => parseEntry(text, volume)).not.toThrow()
  })
})
