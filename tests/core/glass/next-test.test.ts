import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { EVIDENCE_IDS, type EvidenceId } from '#core/glass/evidence'
import { expectedFirstTwo, expectedGain, firstTwo, type OpenPart } from '#core/glass/expected-gain'
import type { Answer, Finding } from '#core/glass/findings'
import { GROUPS, type Group } from '#core/glass/groups'
import { outcomeShares } from '#core/glass/likelihood'
import { glassModel } from '#core/glass/model'
import { firstTwoShare, LAST_TESTS, nextTests, type Asking } from '#core/glass/next-test'
import { rankCauses } from '#core/glass/rank'
import { TESTS } from '#core/glass/tests'
import { CAUSE_IDS } from '#core/glass/causes'
import { causesTogether } from '#core/glass/together'

const model = glassModel([])
const say = (evidence: EvidenceId, answer: Answer = 'yes'): Finding => ({
  evidence,
  answer,
  from: 'operator',
})
const next = (findings: readonly Finding[], asking: Asking = {}) =>
  nextTests(rankCauses(findings, model), findings, model, asking)
const whole = (group: Group): OpenPart => ({ group, glanced: false })

const half = (cause: 'etched' | 'hard-rinse') => ({ cause, share: 0.5 })
/** Doubt of a yes-or-no answer, bits. */
const h = (p: number): number => -p * Math.log2(p) - (1 - p) * Math.log2(1 - p)
const together = (findings: readonly Finding[]) =>
  causesTogether(rankCauses(findings, model), findings, model)

const anyFindings = fc.array(
  fc.record({
    evidence: fc.constantFrom(...EVIDENCE_IDS),
    answer: fc.constantFrom<Answer>('yes', 'no', 'unknown'),
    from: fc.constant<'operator'>('operator'),
  }),
  { maxLength: 30 },
)

describe('how often a test shows what', () => {
  it('is a set of shares for every cause: none below 0, together 1', () => {
    for (const group of GROUPS as readonly Group[])
      for (const cause of CAUSE_IDS) {
        const shares = outcomeShares(group, cause, model)
        expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12)
        for (const share of shares) expect(share).toBeGreaterThan(0)
      }
  })
})

describe('expected information of a test', () => {
  it('is nothing when one cause is certain, and nothing when the causes answer alike', () => {
    const group: Group = [{ evidence: 'acid-clears', often: 0.45 }]
    expect(expectedGain([whole(group)], [{ cause: 'etched', share: 1 }], model)).toBe(0)
    const silent: Group = [{ evidence: 'towelled', often: 0.1 }]
    expect(expectedGain([whole(silent)], [half('etched'), half('hard-rinse')], model)).toBeCloseTo(0, 12)
  })

  it('equals one bit less the doubt left, worked by hand for one yes-or-no test and two causes', () => {
    // Mutual information of a binary channel: H(p) - (h(a) + h(b)) / 2, elementary information theory.
    const group: Group = [{ evidence: 'acid-clears', often: 0.45 }]
    const a = outcomeShares(group, 'etched', model)[0] ?? 0
    const b = outcomeShares(group, 'hard-rinse', model)[0] ?? 0
    expect(expectedGain([whole(group)], [half('etched'), half('hard-rinse')], model)).toBeCloseTo(
      h((a + b) / 2) - (h(a) + h(b)) / 2,
      12,
    )
  })

  it('never falls below 0 nor above what there is to know, and two parts tell no less than one', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.001, max: 1, noNaN: true }), { minLength: 13, maxLength: 13 }),
        fc.constantFrom(...(GROUPS as readonly Group[])),
        fc.constantFrom(...(GROUPS as readonly Group[])),
        (weights, one, other) => {
          const total = weights.reduce((sum, weight) => sum + weight, 0)
          const suspicions = CAUSE_IDS.map((cause, index) => ({
            cause,
            share: (weights[index] ?? 0) / total,
          }))
          const doubt = suspicions.reduce((sum, { share }) => sum - share * Math.log2(share), 0)
          const single = expectedGain([whole(one)], suspicions, model)
          const both = expectedGain([whole(one), whole(other)], suspicions, model)
          expect(single).toBeGreaterThanOrEqual(0)
          expect(both).toBeGreaterThanOrEqual(single - 1e-9)
          expect(both).toBeLessThanOrEqual(doubt + 1e-9)
        },
      ),
    )
  })
})

describe('the chance that the true cause is among the first two', () => {
  it('is worked by hand: two causes always hold it; of four alike two hold half, and a test only adds', () => {
    expect(firstTwo([0.25, 0.25, 0.25, 0.25])).toBeCloseTo(0.5, 12)
    expect(firstTwo([0.1, 0.6, 0.3])).toBeCloseTo(0.9, 12)
    const acid = whole([{ evidence: 'acid-clears', often: 0.45 }])
    expect(expectedFirstTwo([acid], [half('etched'), half('hard-rinse')], model)).toBeCloseTo(1, 12)
  })

  it('is not expected to fall by any test', () => {
    fc.assert(
      fc.property(anyFindings, (findings) => {
        for (const row of next(findings)) expect(row.rise).toBeGreaterThanOrEqual(0)
        const now = firstTwoShare(rankCauses(findings, model))
        expect(now).toBeGreaterThan(2 / 13 - 1e-9)
        expect(now).toBeLessThanOrEqual(1 + 1e-9)
      }),
    )
  })
})

describe('choosing the next test', () => {
  it('begins with a look that costs nothing', () => {
    expect(next([])[0]?.test).toBe('round')
  })

  it('asks for the vinegar wipe where a permanent look and a white film leave film and etching open', () => {
    const open = next([say('white-film'), say('matte-permanent'), say('beads', 'no'), say('sheets', 'no')])
    const wipe = open.find((row) => row.test === 'acid-wipe')
    expect(wipe?.gain).toBeGreaterThan(0.1)
    expect(wipe?.tells).not.toBeNull()
  })

  it('follows information over effort and promises at least the least worth asking', () => {
    fc.assert(
      fc.property(anyFindings, (findings) => {
        const order = next(findings)
        for (const [index, row] of order.entries()) {
          expect(row.gain).toBeGreaterThanOrEqual(0.02)
          expect(row.gainPerEffort).toBeLessThanOrEqual(order[index - 1]?.gainPerEffort ?? Infinity)
        }
      }),
    )
  })

  it('does not ask again what was asked, or cannot be done', () => {
    fc.assert(
      fc.property(anyFindings, fc.constantFrom(...TESTS), (findings, { id }) => {
        expect(next(findings, { asked: [id] }).map((row) => row.test)).not.toContain(id)
        expect(next(findings, { impossible: [id] }).map((row) => row.test)).not.toContain(id)
      }),
    )
  })

  it('looks more closely for a sign that a first glance did not find, and not for one that is seen', () => {
    const signs = ['iridescent', 'foam-or-streaks', 'rim-marks', 'matte-permanent'] as const
    const missed = next([say('white-film'), ...signs.map((sign) => say(sign, 'no'))])
    expect(missed.map((row) => row.test)).toContain('close-look')
    const found = next(signs.map((sign) => say(sign)))
    expect(found.map((row) => row.test)).not.toContain('close-look')
    const fromRecord = signs.map((sign): Finding => ({ evidence: sign, answer: 'no', from: 'record' }))
    expect(next(fromRecord).map((row) => row.test)).not.toContain('close-look')
  })

  it('is chosen at the end by who gets among the first two: never behind a test that raises that less and tells less', () => {
    fc.assert(
      fc.property(anyFindings, fc.integer({ min: 0, max: LAST_TESTS }), (findings, left) => {
        const [first, ...others] = next(findings, { left })
        if (first === undefined) return
        for (const other of others)
          expect(other.rise > first.rise && other.gainPerEffort > first.gainPerEffort).toBe(false)
      }),
    )
  })

  it('does not ask a strip for hardness that a meter has already told', () => {
    const told = [say('hardness-low-tds-high'), say('ph-high-on-glass')]
    expect(next(told).map((row) => row.test)).not.toContain('strips')
  })
})

describe('two causes at once', () => {
  it('names towelling beside missing rinse aid when both show their own sign', () => {
    expect(together([say('ra-dose-low'), say('beads'), say('towelled')])).toEqual(['handling'])
  })

  it('does not name a cause that only shares the signs of the first', () => {
    expect(together([say('ra-dose-low'), say('beads'), say('acid-clears')])).toEqual([])
    expect(together([say('ra-dose-low'), say('acid-clears'), say('hardness-high')])).toEqual([
      'rinse-aid-low',
    ])
    expect(together([])).toEqual([])
  })

  it('does not name a cause that what was seen speaks against', () => {
    expect(
      together([say('ra-dose-low'), say('beads'), say('acid-clears'), say('matte-permanent')]),
    ).not.toContain('etched')
  })
})
