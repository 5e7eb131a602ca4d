import { describe, expect, it } from 'vitest'
import { explainCause } from '#core/explain/glass'
import { askedName, curesTried, findingsOfCheck, triedName } from '#core/glass/check-findings'
import { diagnose, type DiagnosisInput } from '#core/glass/diagnose'
import { compareResidue } from '#core/glass/residue-compare'
import type { GlassCheck } from '#core/records/index'
import { site as siteOf, uuid } from '#tests/support/make-site'

const check = (over: Partial<GlassCheck> = {}): GlassCheck => ({
  id: uuid(),
  at: '2026-03-10T09:00:00.000Z',
  machineId: null,
  seen: [],
  ware: [],
  spread: 'unknown',
  since: 'unknown',
  answers: [],
  confirmedCause: null,
  confirmedAt: null,
  ...over,
})
const look = (over: Partial<GlassCheck>, checks: readonly GlassCheck[] = []) => {
  const input: DiagnosisInput = {
    check: check(over),
    known: null,
    site: siteOf({ glassChecks: checks }),
    weights: [],
    today: '2026-03-10',
  }
  return diagnose(input)
}

const asked = (tests: readonly ('round' | 'gauges' | 'pin' | 'strips' | 'close-look')[]) =>
  tests.map((test) => ({ evidence: askedName(test), answer: 'yes' as const }))
const confirmed = (over: Partial<GlassCheck>): readonly GlassCheck[] => [
  check({ confirmedCause: 'silica', confirmedAt: '2025-06-01T09:00:00.000Z', ...over }),
]
const silicaScore = (checks: readonly GlassCheck[]): number =>
  look({}, checks).ranking.causes.find((row) => row.cause === 'silica')?.score ?? Number.NaN

describe('one glass check', () => {
  it('reads the pictures, the ware, the spread and the start, and leaves unknown names out', () => {
    const findings = findingsOfCheck(
      check({
        seen: ['white-film', 'streaks', 'a-picture-of-another-program'],
        ware: ['glass', 'plates'],
        spread: 'one-zone',
        since: 'weeks',
        answers: [
          { evidence: 'acid-clears', answer: 'yes' },
          { evidence: 'no-such-evidence', answer: 'yes' },
        ],
      }),
    )
    expect(findings.map(({ evidence, answer }) => `${evidence} ${answer}`).toSorted()).toEqual([
      'acid-clears yes',
      'began-suddenly no',
      'foam-or-streaks yes',
      'one-zone yes',
      'other-ware-too yes',
      'white-film yes',
    ])
  })

  it('is not enough before a test was asked, and is enough after five or with a clear lead', () => {
    expect(look({ seen: ['grey'] }).enough).toBe(false)
    expect(look({ answers: asked(['round', 'gauges', 'pin', 'strips']) })).toMatchObject({
      asked: 4,
      enough: false,
    })
    expect(look({ answers: asked(['round', 'gauges', 'pin', 'strips', 'close-look']) }).enough).toBe(true)
    expect(
      look({
        seen: ['white-film'],
        answers: [
          { evidence: 'hardness-high', answer: 'yes' },
          { evidence: 'acid-clears', answer: 'yes' },
          { evidence: 'softener-empty', answer: 'yes' },
          ...asked(['round']),
        ],
      }),
    ).toMatchObject({ enough: true, asked: 1 })
  })

  it('remembers cures: in vain lowers a cause, helped ends the matter', () => {
    const base = { seen: ['clear-spots'] }
    const first = look(base).ranking.causes[0]?.cause
    expect(first).toBe('rinse-aid-low')
    const vain = look({ ...base, answers: [{ evidence: triedName('rinse-aid-low'), answer: 'no' }] })
    expect(vain.ranking.causes[0]?.cause).not.toBe('rinse-aid-low')
    const cured = look({ ...base, answers: [{ evidence: triedName('rinse-aid-low'), answer: 'yes' }] })
    expect(cured.cured).toBe('rinse-aid-low')
    expect(curesTried(check({ answers: [{ evidence: 'tried:rust', answer: 'no' }] }))).toEqual([])
  })

  it('lets causes the rep confirmed at the same machine count for two years, and not at another', () => {
    const plain = silicaScore([])
    expect(silicaScore(confirmed({}))).toBeCloseTo(plain + 0.5, 12)
    expect(silicaScore(confirmed({ confirmedAt: '2023-06-01T09:00:00.000Z' }))).toBe(plain)
    expect(silicaScore(confirmed({ machineId: uuid() }))).toBe(plain)
    expect(silicaScore(confirmed({ confirmedCause: 'rust' }))).toBe(plain)
  })

  it('opens to its working: the points add up to the score', () => {
    const found = look({ seen: ['grey'], answers: [{ evidence: 'acid-no-change', answer: 'yes' }] })
    for (const row of found.ranking.causes) {
      const working = explainCause(row, found.model)
      const [prior, ...points] = working.inputs.map((input) => input.value)
      expect(working.result.value).toBeCloseTo(
        Math.log(prior ?? 0) + points.reduce((sum, value) => sum + value, 0),
        9,
      )
      expect(working.source).toMatch(/judgement/iu)
    }
  })
})

describe('what dries on a glass, now and with the cure', () => {
  it('gives the worked example: 350 mg/L leaves 0.1750 mg beaded, 0.0350 mg sheeted', () => {
    // Source: worked example of the trade notes, held volumes assumed.
    const found = compareResidue('rinse-aid-low', 350)
    expect(found?.ok === true && found.value).toEqual({
      before: expect.closeTo(0.175, 4) as number,
      after: expect.closeTo(0.035, 4) as number,
      by: 'less-water',
    })
  })

  it('compares with purer water where the water is the cause, never below what is there, and not where it says nothing', () => {
    const salty = compareResidue('high-tds', 600)
    expect(salty?.ok === true && salty.value.after < salty.value.before / 10).toBe(true)
    const pure = compareResidue('high-tds', 10)
    expect(pure?.ok === true && pure.value.after).toBe(pure?.ok === true && pure.value.before)
    expect(compareResidue('etched', 350)).toBeNull()
    expect(compareResidue('rinse-aid-low', Number.NaN)?.ok).toBe(false)
    expect(compareResidue('rinse-aid-low', -1)?.ok).toBe(false)
  })
})
