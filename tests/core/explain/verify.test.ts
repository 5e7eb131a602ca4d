import { describe, expect, it } from 'vitest'
import { explainAgreement, explainMeasured } from '#core/explain/verify'
import type { Verification } from '#core/records/index'
import { estimate } from '#core/statistics/make-estimate'
import { arithmetic } from '#tests/support/arithmetic'
import { good } from '#tests/support/outcomes'

const check = (changes: Partial<Verification>): Verification => ({
  id: 'v1',
  at: '2026-03-31T10:00:00.000Z',
  method: 'strip',
  where: 'rinse-water',
  instrumentId: null,
  reading: '50',
  step: '25',
  factor: null,
  blank: null,
  ...changes,
})

describe('the working of a chemical check', () => {
  it.each([
    ['a strip', {}],
    [
      'a titration',
      { method: 'chlorine-titration', reading: '5.4', blank: '0.2', factor: '10', step: '0.1' },
    ],
    ['drops', { method: 'alkalinity-drops', where: 'wash-tank', reading: '8', factor: '0.25' }],
    ['conductivity', { method: 'conductivity', reading: '2200', blank: '400', factor: '900' }],
  ] as const)('of %s can be redone', (_, changes) => {
    const working = good(explainMeasured(check(changes), null))
    expect(arithmetic(working.substituted)).toBeCloseTo(working.result.value, 4)
  })

  it('warns that a titration without a blank counts the water as detergent', () => {
    const working = good(
      explainMeasured(
        check({ method: 'alkalinity-drops', where: 'wash-tank', reading: '8', factor: '0.25' }),
        null,
      ),
    )
    expect(working.assumptions.join(' ')).toMatch(/No blank/)
  })
})

describe('the working of a comparison', () => {
  it('can be redone', () => {
    const m = good(estimate(45, 'mg/L-active', [{ source: 'step-width', standard: 3.25 }]))
    const p = good(estimate(53.2, 'mg/L-active', [{ source: 'flow', standard: 1.7 }]))
    const working = good(explainAgreement(m, p))
    const withoutBars = working.substituted.replaceAll(/\|([^|]*)\|/g, '($1)')
    expect(Math.abs(arithmetic(withoutBars))).toBeCloseTo(working.result.value, 4)
    expect(working.title).toMatch(/differ/)
  })
})
