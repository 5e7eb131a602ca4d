import { describe, expect, it } from 'vitest'
import type { Decay, Leaving, PumpDrift } from '#core/drift/types'
import { fail, ok } from '#core/outcome'
import { leavingWords, nextVisitWords, rateWords, tubeReasonWords } from '#core/messages/drift-words'

const leaving = (more: Partial<Leaving>): Leaving => ({
  edge: 'low',
  since: '2026-03-01',
  days: 30,
  earliest: 10,
  latest: 90,
  prudent: 20,
  racks: null,
  earliestRacks: null,
  rateFrom: 'this-tube',
  ...more,
})
const show = (value: number): string => String(value)
const decay = (direction: Decay['direction'], percent: number): Decay => ({
  rate: percent / 3000,
  standard: 0.0001,
  expanded: 0.0002,
  degreesOfFreedom: 6,
  in30Days: { percent, expanded: 0.6 },
  tests: 4,
  days: 90,
  direction,
  includesSettling: false,
})
const drift = (of: Decay): PumpDrift => ({
  changes: [],
  tubes: [],
  chart: fail({ code: 'no-runs' }),
  outlook: ok({
    test: {
      kind: 'test',
      visitId: 'v',
      testId: 't',
      day: '2026-03-01',
      flow: {
        unit: 'mL/min',
        value: 24,
        standard: 0.2,
        coverage: 2,
        expanded: 0.4,
        low: 23.6,
        high: 24.4,
        degreesOfFreedom: null,
        predicted: false,
        budget: [],
      },
    },
    decay: of,
    rateFrom: 'this-tube',
  }),
  leaving: fail({ code: 'missing', field: 'pump.window', needed: 'window' }),
  tube: { replace: false, reasons: [], ageDays: null },
  nextVisit: null,
})

describe('what is said of a drift', () => {
  it('gives the day the flow leaves its window with both ends of its interval', () => {
    expect(leavingWords(leaving({}))).toBe(
      'If it goes on so it falls out of its window about 31 Mar 2026 (95\u00a0%: not before 11 Mar 2026, not after 30 May 2026).',
    )
  })

  it('claims no drift that is not proved', () => {
    expect(leavingWords(leaving({ edge: 'high', latest: null, earliest: 0 }))).toBe(
      'No drift is proved. At the middle of what the tests allow it rises out of its window about 31 Mar 2026, perhaps already.',
    )
  })

  it('foretells no day where there is none', () => {
    expect(leavingWords(leaving({ days: null, earliest: null, latest: null }))).toBe(
      'No day can be foretold on which it leaves its window.',
    )
    expect(leavingWords(leaving({ days: 0, earliest: 0, latest: 0 }))).toBe('It is outside its window now.')
  })

  it('does not call a rising flow wear', () => {
    expect(rateWords(drift(decay('rising', -3)), show)).toMatch(/^Rises by 3 ± 0\.6 % .*not wear.*siphoning/u)
    expect(rateWords(drift(decay('falling', 2)), show)).toBe('Falls by 2 ± 0.6 % in 30 days.')
    expect(rateWords(drift(decay('steady', 0.2)), show)).toMatch(/^Steady/u)
  })

  it('says why to come again and why a tube should go', () => {
    expect(nextVisitWords({ on: '2026-04-01', days: 7, reason: 'settling-in' })).toBe(
      '1 Apr 2026: a new tube changes most in its first week.',
    )
    expect(tubeReasonWords({ code: 'overdue', days: 1 }, show)).toBe('1 day past its time.')
    expect(tubeReasonWords({ code: 'fell-at-once', left: 24, found: 18.6, score: 6.4 }, show)).toMatch(
      /18\.6 mL\/min after it was left at 24.*worn tube/u,
    )
  })
})
