import { describe, expect, it } from 'vitest'
import { seriesQuality } from '#core/drawdown/series-quality'
import { testFlow } from '#core/drawdown/test-flow'
import { monotoneOdds, settledFrom } from '#core/drawdown/trend'
import { twoLevels } from '#core/drawdown/two-levels'
import { caught, conditions, cylinder, mL, tube } from '#tests/core/drawdown/records'
import { seededRandom } from '#tests/support/seeded-random'
import worked from '../../references/drawdown.json'

const findings = (volumes: readonly number[], over: Parameters<typeof conditions>[0] = {}) =>
  testFlow(caught(volumes), conditions(over)).quality.findings
const codes = (volumes: readonly number[]) => findings(volumes).map((f) => `${f.code} ${f.severity}`)

describe('rising and falling series', () => {
  it('three, four and five that rise by chance: 1 in 6, 24 and 120 (exact)', () => {
    expect([3, 4, 5].map((k) => 1 / monotoneOdds(k))).toEqual(
      [6, 24, 120].map((odds) => expect.closeTo(odds, 9)),
    )
  })

  it('three rising prove nothing, four deserve a warning, five a stop', () => {
    expect(codes([29, 29.4, 29.9])).toEqual([])
    expect(codes([28.6, 29.1, 29.6, 29.9])).toEqual(['rising warns'])
    expect(findings(worked.rising.V)).toEqual([
      {
        code: 'rising',
        runs: 5,
        odds: 1 / 120,
        perRun: expect.closeTo(worked.rising.slope, 10),
        severity: 'stops',
      },
    ])
    expect(codes(worked.rising.V.toReversed())).toEqual(['falling stops'])
  })

  it('a rise smaller than good runs may differ by only warns', () => {
    expect(codes([29.9, 29.91, 29.92, 29.93, 29.94])).toEqual(['rising warns'])
    // 1.9 and 2.1 % of the mean from the first run to the last: good runs differ by 2 %
    expect(codes([29.715, 29.8575, 30, 30.1425, 30.285])).toEqual(['rising warns'])
    expect(codes([29.685, 29.8425, 30, 30.1575, 30.315])).toEqual(['rising stops'])
  })

  it('a mixed series is put to the slope test', () => {
    const mixed = [27.8, 28.6, 28.5, 29.1, 29.6, 29.9]
    expect(findings(mixed)).toMatchObject([{ code: 'trend', direction: 'rising', severity: 'stops' }])
    expect(codes([29.9, 29.5, 30.1, 29.8, 30.2])).toEqual([])
  })

  it('settled means the last three agree within 2 % and do not trend', () => {
    expect(settledFrom(worked.rising.V)).toBeNull()
    expect(settledFrom([27.8, 28.6, 29.8, 30.1, 29.9])).toBe(2)
    expect(settledFrom([30, 30])).toBeNull()
  })
})

describe('other patterns', () => {
  it('one run far from the rest is an outlier, by name', () => {
    expect(findings([30.1, 29.9, 33.5, 30.0, 30.2])).toContainEqual(
      expect.objectContaining({ code: 'outlier', runId: 'run-3', severity: 'stops' }),
    )
  })

  it('two equal readings and a third near by are no outlier', () => {
    expect(codes([30, 30, 30.3])).toEqual([])
  })

  it('a run that reads half a mark off is no outlier: that is as closely as the scale can be read', () => {
    const marked = { instrument: cylinder({ capacity: mL('10'), graduation: mL('0.2') }) }
    expect(findings([4.7, 4.7, 4.8], marked).map((f) => f.code)).not.toContain('outlier')
    expect(findings([4.7, 4.7, 5.2], marked).map((f) => f.code)).toContain('outlier')
  })

  it('scatter over 3 % asks for more, over 5 % stops', () => {
    expect(codes([29, 31, 30.4])).toEqual(['scatter warns'])
    expect(codes([28, 32, 30.5])).toEqual(['scatter stops'])
  })

  it('two levels are seen, and scatter of one kind is not taken for them', () => {
    expect(twoLevels([28.0, 30.1, 28.1, 30.0, 27.9, 30.2])).toEqual({
      low: expect.closeTo(28, 9),
      high: expect.closeTo(30.1, 9),
    })
    expect(twoLevels([28.0, 29.1, 28.6, 30.0, 29.5, 30.2])).toBeNull()
  })

  it('two levels are found in at most about 1 of 100 honest series', () => {
    const chance = seededRandom(20260309)
    for (const size of [4, 5, 6, 8, 10]) {
      let alarms = 0
      for (let i = 0; i < 4000; i += 1)
        if (twoLevels(Array.from({ length: size }, () => chance.normal(30, 2))) !== null) alarms += 1
      expect(alarms / 4000).toBeLessThan(0.016)
    }
  })

  it('one run has too few, two are thin, three are enough', () => {
    expect(codes([30])).toEqual(['too-few-runs stops'])
    expect(codes([30, 30.2])).toEqual(['too-few-runs warns'])
    expect(codes([30, 30.2, 29.9])).toEqual([])
  })

  it('too few marks or roller passages in a run, and a pump that delivers nothing', () => {
    expect(codes([12, 12.1, 11.9])).toEqual(['few-graduations warns'])
    expect(findings([30, 30.2, 29.9], { rollers: { perMinute: '10', count: '3' } })).toEqual([
      { code: 'few-pulses', pulses: 30, need: 40, severity: 'warns' },
    ])
    // 39.9 passages: never "only 40, 40 are wanted"
    expect(findings([30, 30.2, 29.9], { rollers: { perMinute: '13.3', count: '3' } })).toEqual([
      { code: 'few-pulses', pulses: 39, need: 40, severity: 'warns' },
    ])
    expect(codes([0, 0, 0])).toEqual(['no-flow stops', 'few-graduations warns'])
  })

  it('a pump that is not primed, and a tube past its day', () => {
    const notPrimed = testFlow(caught([30, 30.2, 29.9], 60, { primed: false }), conditions())
    expect(notPrimed.quality.findings).toEqual([{ code: 'not-primed', severity: 'stops' }])
    const old = tube({ fittedOn: '2025-03-09', replaceAfterDays: '180' })
    expect(findings([30, 30.2, 29.9], { tube: old })).toEqual([
      { code: 'tube-overdue', days: 185, severity: 'warns' },
    ])
  })

  it('nothing is said of a sound series, and an empty one has no mean', () => {
    expect(findings(worked.drawdown_5rep.V, { instrument: cylinder({ graduation: mL('0.5') }) })).toEqual([])
    const empty = { runs: [], primed: true, graduations: null, pulsesPerMinute: null, tubeOverdueDays: null }
    expect(seriesQuality(empty)).toMatchObject({ mean: null, standardDeviation: null, cv: null })
  })
})
