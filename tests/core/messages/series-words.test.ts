import { describe, expect, it } from 'vitest'
import { testFlow } from '#core/drawdown/test-flow'
import type { GradedFinding, TestConditions } from '#core/drawdown/types'
import { seriesSentences, unreadSentences, type UnreadRun } from '#core/messages/series-words'
import { conditions, cylinder, mL, run, series, tube } from '#tests/core/drawdown/records'

const say = (findings: readonly GradedFinding[], runs = 5, cv: number | null = 0.01): readonly string[] =>
  seriesSentences({ findings, mean: 29, standardDeviation: 0.3, cv }, runs, 'comma', () => 4).map(
    (line) => line.text,
  )

const misread = (at: number): UnreadRun => ({
  run: at,
  problem: { code: 'end-above-start', field: `runs.${at - 1}.end` },
})

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

  it('names the runs that count for nothing, and what to do about them', () => {
    expect(unreadSentences([misread(2)])[0]?.text).toMatch(
      /^Run 2 is not in the series: .*Change it, or leave it out/u,
    )
    expect(unreadSentences([misread(2), misread(4)])[0]?.text).toMatch(/^Runs 2, 4 are not in the series/u)
    expect(unreadSentences([])).toEqual([])
  })

  it('names a cylinder, a bore or a tube that is not known once, and does not call good readings wrong for it', () => {
    const test = Object.freeze(
      series('draw-down', [run('one', mL(100), mL(70)), run('two', mL(100), mL(71))]),
    )
    const said = (over: Partial<TestConditions>): readonly string[] => {
      const { runs } = testFlow(test, conditions(over))
      const unread = runs.flatMap(({ flow }, i) => (flow.ok ? [] : [{ run: i + 1, problem: flow.problem }]))
      return unreadSentences(unread).map((line) => line.text)
    }
    const hundred = { capacity: mL(100) }
    expect(said({ instrument: cylinder(hundred) })).toEqual([])
    expect(said({ instrument: null })).toEqual([expect.stringMatching(/^The instrument is missing: choose/u)])
    expect(said({ instrument: cylinder({ ...hundred, bore: null }) })).toEqual([
      expect.stringMatching(/^The bore of the cylinder is missing/u),
    ])
    expect(said({ instrument: cylinder(hundred), tube: tube({ outsideDiameter: null }) })).toEqual([
      expect.stringMatching(/^The outside diameter of the tube is missing/u),
    ])
  })
})
