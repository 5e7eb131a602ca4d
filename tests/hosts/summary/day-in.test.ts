import { describe, expect, it } from 'vitest'
import { dayIn } from '#main/summary/day-in'

/** Changes of clocks by the IANA time zone database: Dublin 29 March and 25 October 2026, New York 8 March 2026. */
describe('the day at a site', () => {
  it.each([
    ['2026-03-29T00:59:59.000Z', 'Europe/Dublin', '2026-03-29'],
    ['2026-03-29T22:59:59.000Z', 'Europe/Dublin', '2026-03-29'],
    ['2026-03-29T23:00:00.000Z', 'Europe/Dublin', '2026-03-30'],
    ['2026-10-24T23:00:00.000Z', 'Europe/Dublin', '2026-10-25'],
    ['2026-10-25T23:59:59.000Z', 'Europe/Dublin', '2026-10-25'],
    ['2026-10-26T00:00:00.000Z', 'Europe/Dublin', '2026-10-26'],
    ['2026-03-08T04:59:59.000Z', 'America/New_York', '2026-03-07'],
    ['2026-03-09T03:59:59.000Z', 'America/New_York', '2026-03-08'],
    ['2026-03-09T04:00:00.000Z', 'America/New_York', '2026-03-09'],
    ['2026-12-31T10:15:00.000Z', 'Pacific/Chatham', '2027-01-01'],
  ])('is right at %s in %s, though the day has 23 or 25 hours', (instant, zone, day) => {
    expect(dayIn(instant, zone)).toBe(day)
  })

  it('is the computer’s own in a zone it does not know, and never a crash', () => {
    expect(dayIn('2026-06-01T12:00:00.000Z', 'Nowhere/Land')).toMatch(/^2026-0[56]-\d\d$/u)
  })
})
