import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CAUSE_IDS, CAUSES, isCause } from '#core/glass/causes'
import { EVIDENCE_IDS, isEvidence, type EvidenceId } from '#core/glass/evidence'
import type { Answer, Finding } from '#core/glass/findings'
import { GROUPS, type Group } from '#core/glass/groups'
import { glassModel, priorKey, weightKey } from '#core/glass/model'
import { rankCauses } from '#core/glass/rank'
import { WEIGHTS } from '#core/glass/weights'
import reference from '../../references/glass-weights.json'

const shipped = glassModel([])
const say = (evidence: EvidenceId, answer: Answer = 'yes'): Finding => ({
  evidence,
  answer,
  from: 'operator',
})
const scoreOf = (findings: readonly Finding[], cause: string): number =>
  rankCauses(findings, shipped).causes.find((row) => row.cause === cause)?.score ?? Number.NaN

const silicaAfter = (confirmed: number, tried: boolean): number =>
  rankCauses([], shipped, {
    confirmed: Array.from({ length: confirmed }, () => 'silica' as const),
    triedInVain: tried ? ['silica'] : [],
  }).causes.find((row) => row.cause === 'silica')?.score ?? Number.NaN

const anyFindings = fc.array(
  fc.record({
    evidence: fc.constantFrom(...EVIDENCE_IDS),
    answer: fc.constantFrom<Answer>('yes', 'no', 'unknown'),
    from: fc.constantFrom<'operator' | 'record'>('operator', 'record'),
  }),
  { maxLength: 40 },
)

describe('the shipped table', () => {
  it('holds the 13 causes with the priors given, which sum to 1', () => {
    expect(Object.fromEntries(CAUSES.map(({ id, prior }) => [id, prior]))).toEqual(reference.priors)
    expect(CAUSES.reduce((sum, { prior }) => sum + prior, 0)).toBeCloseTo(1, 12)
  })

  it('holds every weight given, and adds only the pictures and the empty container', () => {
    const given = reference.weights as Record<string, Record<string, number>>
    for (const [evidence, weights] of Object.entries(given)) {
      expect(isEvidence(evidence)).toBe(true)
      expect(WEIGHTS[evidence as EvidenceId]).toEqual(weights)
    }
    expect(EVIDENCE_IDS.filter((id) => !(id in given))).toEqual([
      'ra-supply-out',
      'clear-spots',
      'white-film',
      'food-soil',
      'one-zone',
      'other-ware-too',
      'began-suddenly',
      'dries-slowly',
      'feels-slippery',
      'feels-greasy',
      'head-collapses',
      'worse-late',
      'chalk-crust',
    ])
  })

  it('keeps every weight between -3 and +3 and puts every observation in one group', () => {
    for (const weights of Object.values(WEIGHTS))
      for (const weight of Object.values(weights)) expect(Math.abs(weight)).toBeLessThanOrEqual(3)
    const grouped = (GROUPS as readonly Group[]).flatMap((group) => group.map((row) => row.evidence))
    expect(grouped.toSorted()).toEqual([...EVIDENCE_IDS].toSorted())
  })
})

describe('ranking the causes', () => {
  it('gives the worked diagnosis to four digits', () => {
    // Source: worked example of the trade notes, computed by a separate script.
    const { causes } = rankCauses(
      reference.example.evidence.filter(isEvidence).map((evidence) => say(evidence)),
      shipped,
    )
    const expected = Object.entries(reference.example.shares)
    expect(causes.slice(0, expected.length).map((row) => row.cause)).toEqual(expected.map(([cause]) => cause))
    expected.forEach(([, share], index) => expect(causes[index]?.share).toBeCloseTo(share, 5))
  })

  it('accounts for the first cause of the worked diagnosis: dose 2.5, beads 1.8, acid 0.6, new glass 0.4', () => {
    const first = rankCauses(
      reference.example.evidence.filter(isEvidence).map((evidence) => say(evidence)),
      shipped,
    ).causes[0]
    const points = Object.fromEntries(
      (first?.reasons ?? []).map((reason) =>
        reason.kind === 'seen' ? [reason.evidence, reason.points] : [reason.kind, reason.points],
      ),
    )
    expect(points).toEqual({ 'ra-dose-low': 2.5, beads: 1.8, 'acid-clears': 0.6, 'new-glass-bad': 0.4 })
  })

  it('starts from the priors when nothing is known, and cannot separate yet', () => {
    const ranking = rankCauses([], shipped)
    expect(ranking.causes[0]?.cause).toBe('rinse-aid-low')
    for (const row of ranking.causes)
      expect(row.share).toBeCloseTo(CAUSES.find(({ id }) => id === row.cause)?.prior ?? 0, 12)
    expect(ranking.separated).toBe(false)
    expect(ranking.open).toEqual(['rinse-aid-low', 'hard-rinse', 'carryover', ...ranking.open.slice(3)])
  })

  it('says "cannot separate yet" exactly while the first two are less than 1.0 apart', () => {
    fc.assert(
      fc.property(anyFindings, (findings) => {
        const ranking = rankCauses(findings, shipped)
        const [first, second] = ranking.causes
        const gap = (first?.score ?? 0) - (second?.score ?? 0)
        expect(ranking.separated).toBe(gap >= 1)
        expect(ranking.open.length === 1).toBe(gap >= 1)
      }),
    )
  })

  it('never counts "unknown" as anything', () => {
    fc.assert(
      fc.property(anyFindings, (findings) => {
        const known = findings.filter((finding) => finding.answer !== 'unknown')
        expect(rankCauses(findings, shipped)).toEqual(rankCauses(known, shipped))
      }),
    )
  })

  it('counts a plain no against the cause it would have shown, never as if it had not been asked', () => {
    expect(scoreOf([say('towelled', 'no')], 'handling')).toBeLessThan(scoreOf([], 'handling') - 0.5)
    expect(scoreOf([say('rinse-cool', 'no')], 'rinse-temp-low')).toBeLessThan(
      scoreOf([], 'rinse-temp-low') - 0.5,
    )
    expect(scoreOf([say('towelled', 'unknown')], 'handling')).toBe(scoreOf([], 'handling'))
  })

  it('keeps the account: a score is its start and its points, and shares sum to 1', () => {
    fc.assert(
      fc.property(anyFindings, (findings) => {
        const { causes } = rankCauses(findings, shipped)
        expect(causes.map((row) => row.cause).toSorted()).toEqual([...CAUSE_IDS].toSorted())
        expect(causes.reduce((sum, row) => sum + row.share, 0)).toBeCloseTo(1, 9)
        for (const row of causes) {
          expect(Number.isFinite(row.score)).toBe(true)
          const points = row.reasons.reduce((sum, reason) => sum + reason.points, row.start)
          expect(row.score).toBeCloseTo(points, 9)
        }
      }),
    )
  })

  it('tells film from attacked glass by the vinegar wipe, both ways', () => {
    // Source: trade bench test (an extension sheet of 1990): clear when dry means film, unchanged means etched.
    const film = ['hard-rinse', 'carryover', 'rinse-aid-low', 'high-tds', 'detergent-low'] as const
    for (const cause of film) {
      expect(scoreOf([say('acid-clears')], cause) - scoreOf([say('acid-clears')], 'etched')).toBeGreaterThan(
        scoreOf([], cause) - scoreOf([], 'etched') + 3,
      )
    }
    const cleared = rankCauses([say('acid-clears')], shipped)
    expect(cleared.causes[0]?.cause).toBe('hard-rinse')
    expect(cleared.causes.at(-1)?.cause).toMatch(/etched|silica/)
    const unchanged = rankCauses([say('acid-no-change')], shipped)
    expect(unchanged.causes[0]?.cause).toBe('etched')
    for (const cause of ['hard-rinse', 'carryover', 'rinse-aid-low', 'high-tds'])
      expect(scoreOf([say('acid-no-change')], cause)).toBeLessThan(scoreOf([say('acid-no-change')], 'etched'))
  })

  it('turns from film to attacked glass and back whatever else was seen', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.constantFrom(...EVIDENCE_IDS.filter((id) => !id.startsWith('acid'))), {
          maxLength: 12,
        }),
        (others) => {
          const rest = others.map((evidence) => say(evidence))
          const apart = (extra: EvidenceId): number =>
            scoreOf([...rest, say(extra)], 'hard-rinse') - scoreOf([...rest, say(extra)], 'etched')
          const before = scoreOf(rest, 'hard-rinse') - scoreOf(rest, 'etched')
          expect(apart('acid-clears')).toBeCloseTo(before + 5, 9)
          expect(apart('acid-no-change')).toBeCloseTo(before - 4.5, 9)
        },
      ),
    )
  })

  it('counts an empty container and a low dose as the one fact they are', () => {
    expect(scoreOf([say('ra-supply-out'), say('ra-dose-low')], 'rinse-aid-low')).toBe(
      scoreOf([say('ra-dose-low')], 'rinse-aid-low'),
    )
  })

  it('lets what is seen today overrule what a record says', () => {
    const record: Finding = { evidence: 'hardness-high', answer: 'no', from: 'record' }
    for (const order of [
      [record, say('hardness-high')],
      [say('hardness-high'), record],
    ])
      expect(scoreOf(order, 'hard-rinse')).toBe(scoreOf([say('hardness-high')], 'hard-rinse'))
  })

  it('lets the history of the site count: confirmed before, or tried in vain', () => {
    const plain = scoreOf([], 'silica')
    expect(silicaAfter(1, false)).toBeCloseTo(plain + 0.5, 12)
    expect(silicaAfter(5, false)).toBeCloseTo(plain + 1, 12)
    expect(silicaAfter(0, true)).toBeCloseTo(plain - 5, 12)
  })
})

describe('weights edited by the site owner', () => {
  it('replace the shipped ones, and taking them away brings the shipped ones back', () => {
    const edited = glassModel([
      { key: weightKey('beads', 'rinse-aid-low'), value: '0.5' },
      { key: priorKey('silica'), value: '0.5' },
    ])
    expect(edited.weight('beads', 'rinse-aid-low')).toBe(0.5)
    expect(edited.prior.silica).toBe(0.5)
    expect(glassModel([]).weight('beads', 'rinse-aid-low')).toBe(1.8)
    expect(rankCauses([], edited).causes.reduce((sum, row) => sum + row.share, 0)).toBeCloseTo(1, 12)
  })

  it.each([
    ['weight:beads:rinse-aid-low', '3.01'],
    ['weight:beads:rinse-aid-low', '1e0'],
    ['weight:beads:nothing', '1'],
    ['prior:silica', '0'],
    ['prior:silica', '1.1'],
    ['prior:silica', ''],
    ['', '1'],
  ])('leave out what cannot be used and name it: %s = %s', (key, value) => {
    const model = glassModel([{ key, value }])
    expect(model.ignored).toEqual([key])
    expect(rankCauses([], model)).toEqual(rankCauses([], shipped))
  })
})

it('knows its own names', () => {
  expect(isCause('etched')).toBe(true)
  expect(isCause('rust')).toBe(false)
})
