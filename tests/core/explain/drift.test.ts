import { describe, expect, it } from 'vitest'
import { changesOf } from '#core/drift/changes'
import { decayOf } from '#core/drift/decay'
import { leavingDays } from '#core/drift/leaving'
import { explainChange, explainDecay, explainLeaving } from '#core/explain/drift'
import { FELL } from '#tests/references/drift'
import { flowOf, testOn } from '../drift/flows'

const tests = [testOn(0, 24, 0.12), testOn(60, 23, 0.12)]

describe('the working of drift', () => {
  it('shows the score of the derived example, 6.36', () => {
    const standard = FELL.left.expanded / 1.96
    const [change] = changesOf([testOn(0, FELL.left.value, standard), testOn(60, FELL.found.value, standard)])
    if (change === undefined) throw new Error('no change')
    const working = explainChange(change)
    expect(working.substituted).toBe('|24 − 18.6| / √(0.6² + 0.6²) = 6.364')
    expect(working.result.value).toBeCloseTo(100 * FELL.relative, 10)
  })

  it('turns the rate into a fall in thirty days', () => {
    const decay = decayOf({ from: null, to: null, stretches: [tests] })
    if (!decay.ok) throw new Error(decay.problem.code)
    const working = explainDecay(decay.value)
    // 23 of 24 are left after 60 days, so the square root of that after 30
    expect(working.result.value).toBeCloseTo(100 * (1 - Math.sqrt(23 / 24)), 10)
    expect(working.assumptions.join(' ')).not.toContain('siphoning')
  })

  it('says that a rising flow is not wear', () => {
    const decay = decayOf({ from: null, to: null, stretches: [[testOn(0, 20, 0.1), testOn(30, 24, 0.1)]] })
    if (!decay.ok) throw new Error(decay.problem.code)
    expect(explainDecay(decay.value).assumptions.join(' ')).toContain('siphoning')
  })

  it('puts the numbers of the day it leaves into the formula', () => {
    const flow = flowOf(24, 0.12)
    const rate = { rate: 0.001, standard: 0.0002, expanded: 0.0005, degreesOfFreedom: 6 }
    const leaving = {
      ...leavingDays(flow, rate, { low: 21.6, high: 26.4 }),
      since: '2026-03-01',
      racks: null,
      earliestRacks: null,
      rateFrom: 'this-tube' as const,
    }
    const working = explainLeaving(leaving, flow, 21.6, rate)
    expect(working.substituted).toBe('ln(24 / 21.6) / 0.001 = 105.36')
    expect(working.result.value).toBeCloseTo(105.36, 2)
  })
})
