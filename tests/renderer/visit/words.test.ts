import { describe, expect, it } from 'vitest'
import type { CompareRow } from '#renderer/screens/visit/close/compare-rows.ts'
import { headline } from '#renderer/screens/report/summary-words.ts'
import { dayAt, dayText, timeAt } from '#renderer/screens/visit/words/when.ts'

const row = (
  name: string,
  found: CompareRow['found']['state'],
  left: CompareRow['left']['state'],
): CompareRow => ({
  pumpId: name,
  name,
  product: '',
  found: { state: found, text: '1' },
  left: { state: left, text: '1' },
  unit: '',
  turned: 0,
  money: null,
  litres: null,
})

describe('the one sentence of the report', () => {
  it('says what was left in its window and what was put right', () => {
    expect(
      headline([row('Rinse aid', 'proved-out', 'proved-in'), row('Detergent', 'proved-in', 'proved-in')]),
    ).toBe('Both pumps were left inside their windows; Rinse aid was put right.')
    expect(
      headline([row('Rinse aid', 'proved-out', 'proved-out'), row('Detergent', 'proved-in', 'proved-in')]),
    ).toBe('1 of the 2 pumps was left inside its window.')
    const timed = row('Rinse aid', 'proved-in', 'proved-in')
    const out = row('Sanitizer', 'proved-out', 'proved-out')
    const not = row('Detergent', 'not-tested', 'not-tested')
    expect(headline([timed])).toBe('The pump was left inside its window.')
    expect(headline([out])).toBe('The pump was not left inside its window.')
    const unclear = row('Rinse aid', 'cannot-tell', 'cannot-tell')
    expect(headline([unclear, not])).toBe('The runs do not tell where the pump was left.')
    expect(headline([unclear, unclear])).toBe('The runs do not tell where the pumps were left.')
    expect(headline([out, out])).toBe('None of the 2 pumps was left inside its window.')
    // what is said of the pumps timed is not to be read as said of the others
    expect(headline([timed, not])).toBe('The one pump that was timed was left inside its window.')
    expect(headline([timed, timed, not])).toBe('Both pumps that were timed were left inside their windows.')
    expect(headline([timed, out, not])).toBe('1 of the 2 pumps that were timed was left inside its window.')
    expect(headline([row('Rinse aid', 'not-tested', 'not-tested')])).toBe('No pump was timed at this visit.')
  })
})

describe('days and times', () => {
  it('are those of the site, with the month in words', () => {
    expect(dayAt('2026-03-09T23:30:00.000Z', 'Europe/Berlin')).toBe('10 March 2026')
    expect(timeAt('2026-03-09T23:30:00.000Z', 'Europe/Berlin')).toBe('00:30')
    expect(dayText('2026-03-09')).toBe('9 March 2026')
  })

  it('do not fail on a time zone this computer does not know', () => {
    expect(dayAt('2026-03-09T12:00:00.000Z', 'Nowhere/Else')).toMatch(/2026$/u)
  })
})
