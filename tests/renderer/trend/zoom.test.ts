import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dayFromNumber, dayNumberOf } from '#core/units/days'
import {
  along,
  closer,
  isWhole,
  tickDays,
  wider,
  zoomBy,
  type DayRange,
} from '#renderer/screens/trend/zoom.ts'

const whole: DayRange = { from: dayNumberOf('2025-11-01'), to: dayNumberOf('2026-12-01') }
const steps = fc.array(fc.constantFrom('+', '-', 'ArrowLeft', 'ArrowRight', 'Home'), { maxLength: 30 })

describe('zooming the days by keyboard', () => {
  it('shows half of the days, around the middle', () => {
    const near = closer(whole, whole)
    expect(near.to - near.from).toBeCloseTo((whole.to - whole.from) / 2, 9)
    expect(near.from - whole.from).toBeCloseTo(whole.to - near.to, 9)
  })

  it('moves within what is shown and stops at both ends', () => {
    const near = closer(closer(whole, whole), whole)
    expect(along(near, whole, 1).from).toBeGreaterThan(near.from)
    let last = near
    for (let i = 0; i < 20; i++) last = along(last, whole, -1)
    expect(last.from).toBeCloseTo(whole.from, 9)
  })

  it('never leaves the days there are, nor comes closer than a fortnight, whatever keys are pressed', () => {
    fc.assert(
      fc.property(steps, (keys) => {
        const shown = keys.reduce<DayRange>((range, key) => zoomBy(key, range, whole) ?? range, whole)
        expect(shown.from).toBeGreaterThanOrEqual(whole.from - 1e-6)
        expect(shown.to).toBeLessThanOrEqual(whole.to + 1e-6)
        expect(shown.to - shown.from).toBeGreaterThanOrEqual(14 - 1e-6)
      }),
    )
  })

  it('shows all again with Home, and leaves other keys alone', () => {
    const near = closer(whole, whole)
    expect(isWhole(near, whole)).toBe(false)
    expect(zoomBy('Home', near, whole)).toEqual(whole)
    expect(isWhole(wider(near, whole), whole)).toBe(true)
    expect(zoomBy('Tab', near, whole)).toBeNull()
    expect(zoomBy('Escape', near, whole)).toBeNull()
  })

  it('names at most seven firsts of a month, and weeks when it is close', () => {
    const firsts = tickDays(whole)
    expect(firsts.length).toBeLessThanOrEqual(7)
    for (const day of firsts) expect(dayFromNumber(day)).toMatch(/-01$/u)
    const weeks = tickDays({ from: whole.from, to: whole.from + 30 })
    expect(weeks.length).toBeGreaterThan(2)
    for (const [i, day] of weeks.entries()) if (i > 0) expect(day - (weeks[i - 1] ?? 0)).toBe(7)
  })
})
