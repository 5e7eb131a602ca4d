import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { addDays, dayFromNumber, dayNumberOf, daysBetween, doneOn } from '#core/units/days'

describe('calendar days', () => {
  it('agree with the calendar of the runtime for every day of four centuries tried', () => {
    fc.assert(
      fc.property(fc.integer({ min: -719_000, max: 2_900_000 }), (number) => {
        const expected = new Date(number * 86_400_000).toISOString().slice(0, 10)
        expect(dayFromNumber(number)).toBe(expected)
        expect(dayNumberOf(expected)).toBe(number)
      }),
      { numRuns: 2000 },
    )
  })

  it('count over a leap day and over a change of the clocks', () => {
    expect(daysBetween('2028-02-28', '2028-03-01')).toBe(2)
    expect(daysBetween('2026-03-28T23:30:00.000Z', '2026-03-30T00:10:00.000Z')).toBe(2)
    expect(addDays('2026-12-31', 1)).toBe('2027-01-01')
    expect(daysBetween('2026-05-02', '2026-05-01')).toBe(-1)
  })

  it('take what was done on an evening west of Greenwich, tomorrow in UTC, for done today', () => {
    // 17:30 on the 9th in Los Angeles (UTC-7 after the 8th of March 2026)
    expect(doneOn('2026-03-10T00:30:00.000Z', '2026-03-09')).toBe('2026-03-09')
    expect(doneOn('2026-03-10T00:30:00.000Z', '2026-03-10')).toBe('2026-03-10')
    expect(doneOn('2026-03-10T00:30:00.000Z', '2026-03-12')).toBe('2026-03-10')
    expect(doneOn('2029-03-01T00:30:00.000Z', '2029-02-28')).toBe('2029-02-28')
    // two days ahead is no evening
    expect(doneOn('2026-03-11T00:30:00.000Z', '2026-03-09')).toBe('2026-03-11')
  })
})
