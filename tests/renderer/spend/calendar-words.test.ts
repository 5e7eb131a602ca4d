import { describe, expect, it } from 'vitest'
import type { SiteCalendar } from '#core/records/index'
import { calendarWords } from '#renderer/screens/spend/calendar-words.ts'

const week = (over: Partial<SiteCalendar> = {}): SiteCalendar => ({
  daysPerWeek: '5.5',
  closures: [],
  seasons: [],
  growthPercentPerYear: null,
  ...over,
})
const words = (over: Partial<SiteCalendar>, sign: 'point' | 'comma' = 'point') =>
  calendarWords(week(over), '2026-06-01', sign)

describe('the calendar of a month, in words', () => {
  it('says how often it is open, with the decimal sign of the country', () => {
    expect(words({})).toBe('Open 5.5 days a week; no closed days entered for the coming year')
    expect(words({}, 'comma')).toMatch(/^Open 5,5 days/u)
    expect(words({ daysPerWeek: '1' })).toMatch(/^Open 1 day a week/u)
  })

  it('counts the closed days of the coming year, each once, and none that are over or further off', () => {
    const closures = [
      { id: 'a', from: '2026-05-20', to: '2026-06-03', reason: '' },
      { id: 'b', from: '2026-06-02', to: '2026-06-05', reason: '' },
      { id: 'c', from: '2027-05-31', to: '2027-06-30', reason: '' },
    ]
    // 1 to 5 June, and 31 May of the next year: 365 days from the 1st of June end with it
    expect(words({ closures })).toContain('closed 6 days in the coming year')
  })

  it('names the months that are busier or quieter, and growth either way', () => {
    const seasons = [
      { month: 7, percent: '150' },
      { month: 8, percent: '120' },
      { month: 1, percent: '50' },
      { month: 2, percent: '100' },
    ] as SiteCalendar['seasons']
    expect(words({ seasons })).toContain('busier in Jul and Aug; quieter in Jan')
    expect(words({ growthPercentPerYear: '3' })).toContain('3.0 % more racks every year')
    expect(words({ growthPercentPerYear: '-3' })).toContain('3.0 % fewer racks every year')
  })

  it('says nothing of a calendar that cannot be read', () => {
    expect(words({ daysPerWeek: '8' })).toBeNull()
  })
})
