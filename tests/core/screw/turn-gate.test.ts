import { describe, expect, it } from 'vitest'
import type { SeriesQuality, GradedFinding } from '#core/drawdown/types'
import type { CheckAnswer } from '#core/records/visit'
import { conditionsOf, turnGate, type GateQuestion } from '#core/screw/turn-gate'

const quality = (...findings: readonly GradedFinding[]): SeriesQuality => ({
  findings,
  mean: 20,
  standardDeviation: 0.2,
  cv: 0.01,
})
const good: GateQuestion = {
  setBy: 'screw',
  hasWindow: true,
  inputsComplete: true,
  quality: quality(),
  conditions: 'ok',
  cautionsAcknowledged: true,
}

const answer = (check: CheckAnswer['check'], given: CheckAnswer['answer']): CheckAnswer => ({
  machineId: 'm',
  check,
  answer: given,
  value: null,
  note: '',
})

describe('the gate before a turn', () => {
  it('never lets a screw be turned for a strength that a probe holds, however fine the series', () => {
    expect(turnGate({ ...good, heldByProbe: true })).toEqual(['held-by-probe'])
  })

  it('opens when everything is in order, and warnings do not close it', () => {
    expect(turnGate(good)).toEqual([])
    const warned = quality({ code: 'tube-overdue', days: 20, severity: 'warns' })
    expect(turnGate({ ...good, quality: warned })).toEqual([])
  })

  it.each([
    ['an unprimed line', quality({ code: 'not-primed', severity: 'stops' }), 'not-primed'],
    ['a single run', quality({ code: 'too-few-runs', have: 1, need: 2, severity: 'stops' }), 'too-few-runs'],
    [
      'scatter above 5 %',
      quality({ code: 'scatter', cv: 0.06, limit: 0.05, severity: 'stops' }),
      'series-scatters',
    ],
    [
      'five rising runs',
      quality({ code: 'rising', runs: 5, odds: 1 / 120, perRun: 0.5, severity: 'stops' }),
      'series-trends',
    ],
    [
      'an outlier',
      quality({ code: 'outlier', runId: 'x', statistic: 2, critical: 1.7, severity: 'stops' }),
      'series-has-outlier',
    ],
    ['no test', null, 'not-tested'],
  ])('refuses for %s', (_, series, reason) => {
    expect(turnGate({ ...good, quality: series })).toEqual([reason])
  })

  it('names every reason at once', () => {
    expect(
      turnGate({
        setBy: 'percent',
        hasWindow: false,
        inputsComplete: false,
        quality: null,
        conditions: 'not-ok',
        cautionsAcknowledged: false,
      }),
    ).toEqual(['not-set-by-screw', 'caution-not-acknowledged', 'condition-not-ok', 'no-window', 'not-tested'])
    expect(turnGate({ ...good, inputsComplete: false })).toEqual(['inputs-missing'])
  })

  it('takes "not checked" for an answer, and none for none', () => {
    const needed = ['supply-pressure', 'drain-air-gap'] as const
    const both = [answer('supply-pressure', 'ok'), answer('drain-air-gap', 'not-checked')]
    expect(conditionsOf(both, 'm', needed)).toBe('ok')
    expect(conditionsOf(both.slice(1), 'm', needed)).toBe('not-answered')
    expect(conditionsOf([answer('drain-air-gap', 'not-ok')], 'm', needed)).toBe('not-ok')
    expect(conditionsOf(both, 'another machine', needed)).toBe('not-answered')
  })
})
