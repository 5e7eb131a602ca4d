import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Decimal } from '#core/units/decimal'
import { formatEntry, formatEstimate, formatMoney, formatNumber, formatPlaces } from '#core/units/format'
import { roundMoney } from '#core/units/money'
import type { Estimate } from '#core/statistics/estimate'

const estimate = (value: number, expanded: number): Estimate<'mL/min'> => ({
  unit: 'mL/min',
  value,
  standard: expanded / 2,
  coverage: 2,
  expanded,
  low: value - expanded,
  high: value + expanded,
  degreesOfFreedom: null,
  predicted: false,
  budget: [],
})

describe('formatEstimate', () => {
  it.each([
    [29.9, 0.6189659687, '29.90 ± 0.62 mL/min'],
    [29.9, 6.189, '29.9 ± 6.2 mL/min'],
    [1234.56, 61.9, '1235 ± 62 mL/min'],
    [0.75, 0.0099, '0.7500 ± 0.0099 mL/min'],
    [24, 0.996, '24.0 ± 1.0 mL/min'],
  ])('%d with U %d is %s', (value, expanded, whole) => {
    // GUM 7.2.6: at most two significant digits of the uncertainty, the value to the same place.
    expect(formatEstimate(estimate(value, expanded), 'point').whole).toBe(whole)
  })

  it('uses the decimal comma when asked', () => {
    expect(formatEstimate(estimate(29.9, 0.62), 'comma').whole).toBe('29,90 ± 0,62 mL/min')
  })
})

describe('formatNumber', () => {
  it.each([
    [198.11133857, 4, '198.1'],
    [0.02407778, 4, '0.02408'],
    [1369.6875, 4, '1370'],
    [0, 4, '0'],
    [9.99996, 4, '10.00'],
    [-3.25, 2, '−3.3'],
  ])('%d to %d significant digits is %s', (value, digits, text) => {
    expect(formatNumber(value, digits, 'point')).toBe(text)
  })

  it('never shows minus zero', () => {
    fc.assert(
      fc.property(fc.double({ min: -0.004, max: 0, noNaN: true }), (value) => {
        expect(formatPlaces(value, 2, 'point')).toBe('0.00')
      }),
    )
  })
})

describe('money', () => {
  it.each([
    ['32.985', 'EUR', '32.99 EUR'],
    ['32.984999', 'EUR', '32.98 EUR'],
    ['1499.5', 'JPY', '1500 JPY'],
    ['1.2345', 'KWD', '1.235 KWD'],
  ])('%s %s is paid as %s', (amount, currency, text) => {
    // Minor units: ISO 4217 (from memory).
    expect(formatMoney(roundMoney(new Decimal(amount), currency), currency, 'point')).toBe(text)
  })
})

describe('formatEntry', () => {
  it('keeps the digits as they were typed', () => {
    expect(formatEntry({ value: '1.50', unit: 'fl-oz-us' }, 'comma')).toBe('1,50 US fl oz')
  })
})
