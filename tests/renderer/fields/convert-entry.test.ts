import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { UNITS, UNIT_NAMES } from '#core/units/dimensions'
import { entry } from '#core/units/entry'
import { convertExactly } from '#core/units/quantity'
import { PLAIN_DECIMAL } from '#core/units/read'
import { convertEntry } from '#renderer/fields/convert-entry.ts'
import { unitsFor, type Measured } from '#renderer/fields/units-for.ts'
import { withoutUnit } from '#renderer/fields/without-unit.ts'

describe('changing the unit of an entry', () => {
  // NIST Handbook 44 Appendix C: 1 US fl oz = 29.573 53 mL, 1 US gal = 3.785 412 L; 180 °F = 82.222 °C (exact rule)
  it.each([
    [entry('1', 'fl-oz-us'), 'mL', '29.5735'],
    [entry('2.5', 'gal-us'), 'L', '9.46353'],
    [entry('180', 'degF'), 'degC', '82.2222'],
    [entry('20', 'psi'), 'kPa', '137.895'],
    [entry('12.50', 'L'), 'mL', '12500'],
    [entry('0', 'degC'), 'degF', '32'],
  ] as const)('%o in %s is %s', (from, to, value) => {
    expect(convertEntry(from, to)).toEqual({ value, unit: to })
  })

  it('leaves the typed digits alone when the unit stays', () => {
    expect(convertEntry(entry('1.50', 'mL'), 'mL')).toEqual(entry('1.50', 'mL'))
  })

  it('keeps the quantity to six digits, in a form that can be saved', () => {
    const unit = fc.constantFrom(...UNIT_NAMES)
    const value = fc.integer({ min: 1, max: 9_999_999 }).map((digits) => (digits / 1000).toFixed(3))
    fc.assert(
      fc.property(unit, unit, value, (from, to, text) => {
        fc.pre(UNITS[from].dimension === UNITS[to].dimension && UNITS[from].dimension !== 'temperature')
        const exact = convertExactly(text, from, to).toNumber()
        fc.pre(exact > 1e-5)
        const converted = convertEntry(entry(text, from), to)
        expect(converted.value).toMatch(PLAIN_DECIMAL)
        expect(Math.abs(Number(converted.value) / exact - 1)).toBeLessThan(5.01e-6)
      }),
    )
  })
})

describe('units offered', () => {
  const measured: readonly Measured[] = [
    'caught',
    'weighed',
    'container',
    'water',
    'temperature',
    'pressure',
    'hardness',
  ]
  it.each(measured)('for %s all measure the same thing, each once, in every system', (what) => {
    for (const system of ['metric', 'us', 'imperial'] as const) {
      const units = unitsFor(what, system)
      expect(new Set(units).size).toBe(units.length)
      expect(new Set(units.map((unit) => UNITS[unit].dimension)).size).toBe(1)
    }
  })
})

describe('a unit typed into a field that has one', () => {
  it.each([
    ['12 %', '%', '12 '],
    ['12%', '%', '12'],
    ['7 DAYS', 'days', '7 '],
    ['12', '%', '12'],
    ['12 mL', '%', '12 mL'],
    ['5', '', '5'],
  ])('%j beside %j reads %j', (text, unit, rest) => {
    expect(withoutUnit(text, unit)).toBe(rest)
  })
})
