import { describe, expect, it } from 'vitest'
import { dayIn } from '#renderer/state/clock.svelte.ts'

describe('dayIn(instant, zone)', () => {
  // offsets from the IANA time zone database, from memory: Auckland UTC+13 in January, Honolulu UTC-10
  it.each([
    ['2026-01-15T11:30:00Z', 'Pacific/Auckland', '2026-01-16'],
    ['2026-01-15T09:30:00Z', 'Pacific/Honolulu', '2026-01-14'],
    ['2026-01-15T23:59:59Z', 'UTC', '2026-01-15'],
  ])('%s in %s is %s', (instant, zone, day) => {
    expect(dayIn(new Date(instant), zone)).toBe(day)
  })

  it('takes the computer’s own zone for one it does not know', () => {
    expect(dayIn(new Date('2026-01-15T12:00:00Z'), 'Atlantis/Capital')).toMatch(/^2026-01-1[456]$/u)
  })
})
