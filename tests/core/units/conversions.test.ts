import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { UNIT_NAMES, UNITS, unitsOf, type Dimension } from '#core/units/dimensions'
import { convertExactly, inUnit, quantity } from '#core/units/quantity'
import { canonicalUnit, read } from '#core/units/read'
import { CONVERSIONS, ROUNDED_CONVERSIONS, TEMPERATURES } from '../../references/units'

describe('convertExactly', () => {
  it.each(CONVERSIONS)('1 $from is exactly $factor $to ($source)', ({ from, to, factor }) => {
    expect(convertExactly('1', from, to).toFixed()).toBe(factor)
  })

  it.each(ROUNDED_CONVERSIONS)(
    '1 $from is $published $to as printed ($source)',
    ({ from, to, published, tolerance }) => {
      expect(Math.abs(convertExactly('1', from, to).toNumber() - published)).toBeLessThanOrEqual(tolerance)
    },
  )

  it.each(TEMPERATURES)('%d °F is %d °C', (fahrenheit, celsius) => {
    expect(convertExactly(String(fahrenheit), 'degF', 'degC').toNumber()).toBeCloseTo(celsius, 12)
    expect(inUnit(quantity(fahrenheit, 'degF'), 'degC')).toBeCloseTo(celsius, 12)
  })

  it('a US gallon is 128 US fluid ounces and an imperial gallon 160 imperial ones, to the last digit', () => {
    expect(convertExactly('1', 'gal-us', 'fl-oz-us').toFixed()).toBe('128')
    expect(convertExactly('1', 'gal-imp', 'fl-oz-imp').toFixed()).toBe('160')
  })

  it('refuses to convert between things that do not measure the same', () => {
    expect(() => convertExactly('1', 'mL', 'g')).toThrow('do not measure the same thing')
  })
})

describe('quantities', () => {
  it('there and back in any unit of a dimension keeps the value to 1e-12', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...UNIT_NAMES),
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        (unit, x) => {
          const q = quantity(x, unit)
          const back = inUnit(q as never, unit as never)
          expect(Math.abs(back - x)).toBeLessThanOrEqual(1e-12 * Math.max(40, Math.abs(x)))
        },
      ),
    )
  })

  it('an entry means the same quantity in every unit of its dimension', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...UNIT_NAMES),
        fc.integer({ min: 1, max: 999_999 }),
        fc.integer({ min: 0, max: 3 }),
        (unit, digits, places) => {
          const value = (digits / 10 ** places).toFixed(places)
          const canonical = read({ value, unit } as never, 'x')
          for (const other of unitsOf(UNITS[unit].dimension as Dimension)) {
            const text = convertExactly(value, unit, other).toFixed(15)
            if (text.replace(/^-?(\d+).*$/u, '$1').length > 15) continue
            const again = read({ value: text, unit: other } as never, 'x')
            if (!canonical.ok || !again.ok) throw new Error('a plain decimal was not read')
            const [a, b] = [canonical.value as unknown as number, again.value as unknown as number]
            // 15 decimal places of the other unit are all an entry can hold
            const step = Math.abs(inUnit(quantity(1e-15, other) as never, other as never)) * 4000
            expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-12 * Math.abs(a) + step)
          }
        },
      ),
    )
  })

  it('every dimension has exactly one canonical unit', () => {
    for (const { dimension } of Object.values(UNITS)) expect(() => canonicalUnit(dimension)).not.toThrow()
  })
})

describe('read', () => {
  it('says which field is missing, unreadable or out of range', () => {
    expect(read(null, 'pump.doseSeconds')).toEqual({
      ok: false,
      problem: { code: 'number-missing', field: 'pump.doseSeconds' },
    })
    expect(read({ value: '1e3', unit: 's' }, 'f')).toEqual({
      ok: false,
      problem: { code: 'number-unreadable', field: 'f', text: '1e3' },
    })
    expect(read({ value: '0', unit: 'min' }, 'f', { above: 0 })).toEqual({
      ok: false,
      problem: { code: 'number-out-of-range', field: 'f', low: 0, high: null, unit: 's' },
    })
    expect(read({ value: '2', unit: 'min' }, 'f', { low: 120, high: 120 }).ok).toBe(true)
  })
})
