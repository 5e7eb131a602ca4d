import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { SiteCalendar } from '#core/records/index'
import { openCalendar, openDaysPerMonth } from '#core/spend/calendar'
import { addMonths, monthDays, monthOf } from '#core/spend/months'
import { averageMonth, spanOf } from '#core/spend/span'
import { dayNumberOf } from '#core/units/days'
import { good, id } from './build'

const week = (daysPerWeek: string, over: Partial<SiteCalendar> = {}): SiteCalendar => ({
  daysPerWeek,
  closures: [],
  seasons: [],
  growthPercentPerYear: null,
  ...over,
})
const open = (calendar: SiteCalendar, asOf = '2026-01-01') => good(openCalendar(calendar, asOf))
const all2026 = [dayNumberOf('2026-01-01'), dayNumberOf('2027-01-01')] as const

describe('open days', () => {
  /** Source: days per week x 365.25 / 12 / 7, the project's domain notes, part 5.1. */
  it.each([
    ['5', 21.7411],
    ['6', 26.0893],
    ['7', 30.4375],
  ])('%s days a week are %f a month', (days, expected) => {
    expect(openDaysPerMonth(open(week(days)))).toBeCloseTo(expected, 4)
    expect(averageMonth(open(week(days))).openDays).toBeCloseTo(expected, 4)
  })

  it('a closure takes its open days and no more', () => {
    const closures = [{ id: id(1), from: '2026-08-03', to: '2026-08-16', reason: 'holidays' }]
    const span = spanOf(open(week('5', { closures })), ...all2026)
    // 351 days left of 365, five in seven of them open
    expect(span.openDays).toBeCloseTo((351 * 5) / 7, 9)
    const average = averageMonth(open(week('5', { closures })))
    expect(average.openDays).toBeCloseTo((21.741071 * 351) / 365, 5)
  })

  it('overlapping closures count once, and one that ends before it begins counts as nothing', () => {
    const closures = [
      { id: id(1), from: '2026-08-03', to: '2026-08-16', reason: '' },
      { id: id(2), from: '2026-08-10', to: '2026-08-16', reason: '' },
      { id: id(3), from: '2026-09-10', to: '2026-09-01', reason: '' },
    ]
    expect(spanOf(open(week('7', { closures })), ...all2026).openDays).toBeCloseTo(351, 9)
  })

  it('a season weighs the racks, not the fills', () => {
    const span = spanOf(open(week('7', { seasons: [{ month: 7, percent: '150' }] })), ...all2026)
    expect(span.openDays).toBeCloseTo(365, 9)
    expect(span.rackDays).toBeCloseTo(365 + 15.5, 9)
  })

  it('growth counts as nothing today and in full after a year', () => {
    const calendar = open(week('7', { growthPercentPerYear: '10' }))
    const today = spanOf(calendar, calendar.origin, calendar.origin + 1)
    const nextYear = spanOf(calendar, calendar.origin + 365, calendar.origin + 366)
    expect(today.rackDays).toBeCloseTo(1, 9)
    expect(nextYear.rackDays).toBeCloseTo(1.1 ** (365 / 365.25), 9)
  })

  it('eight days a week is refused where it was entered', () => {
    const outcome = openCalendar(week('8'), '2026-01-01')
    expect(outcome).toMatchObject({ ok: false, problem: { field: 'calendar.daysPerWeek' } })
  })

  it('the days of any two stretches that meet add up', () => {
    const calendar = open(
      week('6', {
        seasons: [{ month: 12, percent: '130' }],
        closures: [{ id: id(1), from: '2026-03-01', to: '2026-03-20', reason: '' }],
        growthPercentPerYear: '4',
      }),
    )
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 20_000, max: 22_000 }), { minLength: 3, maxLength: 3 }),
        (days) => {
          const [a = 0, b = 0, c = 0] = days.sort((x, y) => x - y)
          const sum = spanOf(calendar, a, b).rackDays + spanOf(calendar, b, c).rackDays
          expect(sum).toBeCloseTo(spanOf(calendar, a, c).rackDays, 6)
        },
      ),
    )
  })
})

describe('months', () => {
  it('go on over the turn of the year, both ways', () => {
    expect(addMonths('2026-11', 3)).toBe('2027-02')
    expect(addMonths('2026-02', -14)).toBe('2024-12')
    expect(monthOf('2026-03-09')).toBe('2026-03')
  })

  /** Source: ISO 8601 calendar; 2024 is a leap year. */
  it.each([
    ['2024-02', 29],
    ['2026-02', 28],
    ['2026-04', 30],
    ['2026-12', 31],
  ])('%s has %i days', (month, days) => {
    const { from, to } = monthDays(month)
    expect(to - from).toBe(days)
  })
})
