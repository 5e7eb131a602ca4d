import { describe, expect, it } from 'vitest'
import { shiftDays } from '#core/documents/shift-days'

describe('shiftDays', () => {
  it('moves days and instants, keeps the time of day, and leaves every other text alone', () => {
    const before = Object.freeze({
      on: '2026-02-27',
      at: '2026-12-31T14:05:00.000Z',
      list: ['2027-02-28', 'delivered 2026-02-27', '2026-02'],
      count: 3,
      none: null,
    })
    expect(shiftDays(before, 2)).toEqual({
      on: '2026-03-01',
      at: '2027-01-02T14:05:00.000Z',
      list: ['2027-03-02', 'delivered 2026-02-27', '2026-02'],
      count: 3,
      none: null,
    })
    expect(shiftDays(shiftDays(before, 40), -40)).toEqual(before)
  })
})
