import { describe, expect, it } from 'vitest'
import { awayWords, daysFrom, dayWords } from '#renderer/state/days-words.ts'

describe('days in words', () => {
  it.each([
    ['2026-03-09', '2026-03-09', 0],
    ['2026-03-09', '2026-03-10', 1],
    // the day clocks go forward in Europe, and a leap day: whole days all the same
    ['2026-03-28', '2026-03-30', 2],
    ['2028-02-28', '2028-03-01', 2],
    ['2026-01-02', '2025-12-31', -2],
  ])('from %s to %s are %s days', (from, to, days) => {
    expect(daysFrom(from, to)).toBe(days)
  })

  it.each([
    ['2026-03-09', 'today'],
    ['2026-03-08', 'yesterday'],
    ['2026-03-10', 'tomorrow'],
    ['2026-02-27', '10 days ago'],
    ['2026-03-19', 'in 10 days'],
    ['2025-03-09', '12 months ago'],
  ])('%s seen from 9 March 2026 is %s', (day, words) => {
    expect(awayWords(day, '2026-03-09')).toBe(words)
  })

  it('names the month, so that nobody takes it for the day', () => {
    expect(dayWords('2026-03-09')).toBe('9 Mar 2026')
  })
})
