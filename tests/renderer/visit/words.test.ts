import { describe, expect, it } from 'vitest'
import type { GradedFinding } from '#core/drawdown/types'
import type { CompareRow } from '#renderer/screens/visit/close/compare-rows.ts'
import { headline } from '#renderer/screens/report/summary-words.ts'
import { seriesSentences } from '#renderer/screens/visit/words/series-words.ts'
import { settlingWords } from '#renderer/screens/visit/words/decision-words.ts'
import { dayAt, dayText, timeAt } from '#renderer/screens/visit/words/when.ts'

const say = (findings: readonly GradedFinding[], runs = 5, cv: number | null = 0.01): readonly string[] =>
  seriesSentences({ findings, mean: 29, standardDeviation: 0.3, cv }, runs, 'comma', () => 4).map(
    (line) => line.text,
  )

describe('what is said of a series', () => {
  it('tells five rising runs from three: air is leaving the line, keep priming', () => {
    expect(say([{ code: 'rising', runs: 5, odds: 1 / 120, perRun: 0.5, severity: 'stops' }])).toEqual([
      'Five rising runs: air is still leaving the line. Keep priming, then time again.',
    ])
    expect(say([{ code: 'rising', runs: 4, odds: 1 / 24, perRun: 0.5, severity: 'warns' }])[0]).toMatch(
      /Time one more/u,
    )
  })

  it('names the run that does not fit by its number, and writes figures with the sign in use', () => {
    expect(say([{ code: 'outlier', runId: 'x', statistic: 2, critical: 1.8, severity: 'stops' }])[0]).toMatch(
      /^Run 4 /u,
    )
    expect(say([{ code: 'scatter', cv: 0.061, limit: 0.05, severity: 'stops' }])[0]).toContain('6,1\u00a0%')
  })

  it('says so when there is nothing to say against it', () => {
    expect(say([], 3)).toEqual(['Three runs that agree: they scatter by 1,0\u00a0% and show no trend.'])
    expect(say([], 0)).toEqual([])
  })
})

describe('the cheapest next step', () => {
  it('is said in runs and whole seconds, never in fewer seconds than are needed', () => {
    expect(settlingWords({ kind: 'more-runs', runs: 1, seconds: 60 }, [])).toBe(
      'One more run of 60 s would settle it.',
    )
    expect(settlingWords({ kind: 'longer-runs', runs: 2, seconds: 94.2 }, [])).toBe(
      '2 more runs, 95 s each, would settle it.',
    )
    expect(
      settlingWords({ kind: 'better-cylinder', instrumentId: 'a', seconds: 60 }, [
        { id: 'a', name: '25 mL' },
      ]),
    ).toContain('“25 mL”')
  })
})

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
    ).toBe('All 2 pumps were left inside their windows; Rinse aid was put right.')
    expect(
      headline([row('Rinse aid', 'proved-out', 'proved-out'), row('Detergent', 'proved-in', 'proved-in')]),
    ).toBe('1 of 2 pumps was left inside its window.')
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
