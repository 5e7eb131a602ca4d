import { describe, expect, it } from 'vitest'
import type { GradedFinding } from '#core/drawdown/types'
import { fail } from '#core/outcome'
import { judgedState, unfitFor } from '#core/worksheet/judged-state'
import type { TestResult } from '#core/worksheet/types'

const decision = { ok: true, value: { verdict: 'proved-in' } } as TestResult['decision']
const test = (findings: readonly GradedFinding[], of = decision): TestResult =>
  ({
    quality: { findings, mean: 5, standardDeviation: 0.1, cv: 0.02 },
    decision: of,
  }) as unknown as TestResult

describe('where a pump stands', () => {
  it('is what the decision says while the series is sound, or only warns, or is short', () => {
    expect(judgedState(test([]))).toBe('proved-in')
    expect(judgedState(test([{ code: 'few-pulses', pulses: 9, need: 10, severity: 'warns' }]))).toBe(
      'proved-in',
    )
    expect(judgedState(test([{ code: 'too-few-runs', have: 1, need: 2, severity: 'stops' }]))).toBe(
      'proved-in',
    )
    expect(
      judgedState(test([{ code: 'outlier', runId: 'x', statistic: 2, critical: 1.8, severity: 'stops' }])),
    ).toBe('proved-in')
    expect(judgedState(test([{ code: 'no-flow', severity: 'stops' }]))).toBe('proved-in')
  })

  it('cannot be told by a series with air, a trend or scatter', () => {
    const findings: readonly GradedFinding[] = [
      { code: 'not-primed', severity: 'stops' },
      { code: 'rising', runs: 5, odds: 1 / 120, perRun: 0.5, severity: 'stops' },
      { code: 'scatter', cv: 0.08, limit: 0.05, severity: 'stops' },
    ]
    for (const finding of findings) {
      expect(judgedState(test([finding])), finding.code).toBe('cannot-tell')
      expect(unfitFor(test([finding]))?.code).toBe(finding.code)
    }
  })

  it('is not tested without a test, and cannot be told without a decision', () => {
    expect(judgedState(null)).toBe('not-tested')
    expect(judgedState(test([], fail({ code: 'no-runs' })))).toBe('cannot-tell')
  })
})
