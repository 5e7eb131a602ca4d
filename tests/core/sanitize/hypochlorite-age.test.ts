import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { agedHypochlorite } from '#core/sanitize/hypochlorite-age'
import { strengthToday } from '#core/sanitize/strength-today'
import reference from '../../references/food-code-hypochlorite-age.json'
import { everyNumberFinite, good, wild } from '../tank/support'
import { product } from './records'

const celsius = (degF: number): number => (degF - 32) / 1.8
const { rows, rules } = reference

const lossAt = (percent: number, t: number) => percent - good(agedHypochlorite(percent, 0.5, t)).value

// tests/references/food-code-hypochlorite-age.json: one community table, and the rules of a storage guide
describe('what is left of an aged hypochlorite', () => {
  it.each(rows.after_30_days)('$degF °F for a month leaves about $left of 12.5 %', ({ degF, left }) => {
    const found = good(agedHypochlorite(rows.trade_percent_start, 30.4375, celsius(degF)))
    expect(Math.abs(found.value - left)).toBeLessThan(rows.tolerance['fitted rows'])
  })

  it.each(rows.after_14_days)(
    'and a row the fit has not seen: $degF °F for two weeks, $left',
    ({ degF, left }) => {
      const found = good(agedHypochlorite(rows.trade_percent_start, 14, celsius(degF)))
      expect(Math.abs(found.value - left)).toBeLessThan(rows.tolerance['row not used in the fit'])
      expect(found.low).toBeLessThan(left)
      expect(found.high).toBeGreaterThan(left)
    },
  )

  it('loses 2 to 4 times as fast per 10 °C, and a quarter as fast at half the strength', () => {
    const [slow = 0, fast = 0] = rules.faster_per_10_degC
    const perTen = lossAt(10, 30) / lossAt(10, 20)
    expect(perTen).toBeGreaterThan(slow)
    expect(perTen).toBeLessThan(fast)
    expect(lossAt(10, 25) / lossAt(5, 25)).toBeCloseTo(rules.slower_on_halving_strength, 1)
  })

  it('says that it is an estimate, and loses nothing on the day of delivery', () => {
    expect(good(agedHypochlorite(10, 20, 25)).predicted).toBe(true)
    expect(good(agedHypochlorite(10, 0, 25))).toMatchObject({ value: 10, standard: 0 })
  })

  it('never grows stronger, and weakens with every day and degree', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 16, noNaN: true }),
        fc.integer({ min: 0, max: 364 }),
        fc.double({ min: 5, max: 39, noNaN: true }),
        (percent, days, t) => {
          const now = good(agedHypochlorite(percent, days, t)).value
          expect(now).toBeLessThanOrEqual(percent)
          expect(good(agedHypochlorite(percent, days + 1, t)).value).toBeLessThan(now)
          if (days > 0) expect(good(agedHypochlorite(percent, days, t + 1)).value).toBeLessThan(now)
        },
      ),
    )
  })

  it('does not guess outside the range the sources speak of', () => {
    fc.assert(
      fc.property(wild, wild, wild, (percent, days, t) => {
        const found = agedHypochlorite(percent, days, t)
        expect(everyNumberFinite(found)).toBe(true)
        if (found.ok) expect(days >= 0 && days <= 365 && t >= 5 && t <= 40).toBe(true)
      }),
    )
    expect(agedHypochlorite(10, 400, 20)).toMatchObject({ ok: false, problem: { field: 'product.age' } })
  })
})

const bleach = (changes: Parameters<typeof product>[1]) =>
  product('bleach', { strength: { kind: 'trade-percent', percent: '10', measuredOn: null }, ...changes })

const warning = (changes: Parameters<typeof product>[1]) =>
  good(strengthToday(bleach(changes), '2026-03-31')).warning

describe('the recorded strength today', () => {
  it('warns after 30 days, without a date, and past the shelf life', () => {
    expect(warning({ deliveredOn: '2026-03-01' })).toBeNull()
    expect(warning({ deliveredOn: '2026-02-28' })).toBe('older-than-30-days')
    expect(warning({})).toBe('no-date')
    expect(warning({ deliveredOn: '2026-03-20', shelfLifeDays: '10' })).toBe('past-shelf-life')
    // the tenth day is the last it keeps
    expect(warning({ deliveredOn: '2026-03-21', shelfLifeDays: '10' })).toBeNull()
  })

  it('counts from the day it was measured, when it was', () => {
    const measured = bleach({
      deliveredOn: '2025-12-01',
      strength: { kind: 'trade-percent', percent: '9', measuredOn: '2026-03-30' },
    })
    expect(good(strengthToday(measured, '2026-03-31'))).toMatchObject({ ageDays: 1, warning: null })
  })

  it('estimates nothing for quat, which keeps', () => {
    const quat = product('quat', {
      strength: { kind: 'weight-percent', percent: '10', active: 'quat', measuredOn: null },
    })
    const found = good(strengthToday(quat, '2026-03-31'))
    expect(found.estimatedNow.ok).toBe(false)
    expect(found.warning).toBeNull()
  })
})
