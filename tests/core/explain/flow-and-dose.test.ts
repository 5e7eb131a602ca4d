import { describe, expect, it } from 'vitest'
import { onBasis } from '#core/dose/on-basis'
import { testFlow } from '#core/drawdown/test-flow'
import { explainDose, explainRequiredFlow } from '#core/explain/dose'
import { explainFlow } from '#core/explain/flow'
import { explainRun, explainTubeFactor } from '#core/explain/run'
import { explainStrength } from '#core/explain/strength'
import type { Working } from '#core/explain/types'
import { context, mLPerMin, mLPerRack, pump, quat, trade } from '#tests/core/dose/records'
import { caught, conditions, cylinder, g, mL, run, scale, series } from '#tests/core/drawdown/records'
import { arithmetic } from '#tests/support/arithmetic'
import { codeOf, good } from '#tests/support/outcomes'
import worked from '../../references/drawdown.json'

const five = caught(worked.drawdown_5rep.V)
const immersed = series('draw-down', [run('a', mL(48), mL('18.3')), run('b', mL(47), mL('17.1'), 61)])
const weighed = series('weighed', [run('a', g(900), g('869.1')), run('b', g(869), g('838.6'))])
const window = { basis: 'ppm-vv', low: '200', target: '250', high: '300' } as const

const workings: readonly (readonly [string, Working])[] = [
  ['flow of five catches', good(explainFlow(five, conditions()))],
  ['flow of a draw-down', good(explainFlow(immersed, conditions()))],
  ['one catch', good(explainRun(run('x', null, mL('29.5')), five, conditions()))],
  ['one draw-down', good(explainRun(run('x', mL(48), mL('18.3')), immersed, conditions()))],
  [
    'one weighing',
    good(explainRun(run('x', g(900), g('869.1')), weighed, conditions({ instrument: scale() }))),
  ],
  ['tube factor', good(explainTubeFactor(immersed, conditions()))],
  ['dose', good(explainDose(mLPerMin(10.37), pump()))],
  ['ppm v/v', good(explainStrength('ppm-vv', mLPerRack(2.013), context('3.1')))],
  ['mg/L product', good(explainStrength('mg-per-L-product', mLPerRack(2.013), context('3.1')))],
  ['chlorine', good(explainStrength('mg-per-L-active', mLPerRack(2.5), context('4.467', trade('9.5'))))],
  ['quat', good(explainStrength('mg-per-L-active', mLPerRack(4.5), context('3.1', quat(10), '1.05')))],
  ['tank', good(explainStrength('g-per-L-tank', mLPerRack(6.5), context('3.596', { kind: 'none' }, '1.25')))],
  ['required flow', good(explainRequiredFlow(pump({ window }), context(3)))],
]

describe('a working', () => {
  it.each(workings)('of %s: the numbers put in give the result shown, to four digits', (_, working) => {
    expect(arithmetic(working.substituted) / working.result.value).toBeCloseTo(1, 3)
  })

  it.each(workings)('of %s names every symbol of its formula, and its source', (_, working) => {
    const right = working.formula.slice(working.formula.indexOf('=') + 1)
    const known = working.inputs.map((input) => input.symbol)
    const symbols = right.match(/[A-Za-zρν]+\d*/g) ?? []
    for (const symbol of symbols) expect(known).toContain(symbol)
    expect(working.source.length).toBeGreaterThan(10)
  })

  it('shows the same figure as the calculation', () => {
    expect(workings[0]?.[1].result.value).toBe(good(testFlow(five, conditions()).flow).value)
    const strength = good(explainStrength('ppm-vv', mLPerRack(2), context(3)))
    expect(strength.result.value).toBe(good(onBasis('ppm-vv', mLPerRack(2), context(3))).value)
  })

  it('says what is taken for granted', () => {
    const bare = conditions({ instrument: cylinder({ tolerance: null }) })
    expect(good(explainFlow(five, bare)).assumptions.join(' ')).toContain('class B')
    const lifted = { ...immersed, tubeImmersed: false }
    expect(good(explainFlow(lifted, conditions())).assumptions.join(' ')).toContain('lifted out')
    const plate = {
      ...context(3),
      rinse: { kind: 'data-plate', perRack: { value: '3', unit: 'L' }, spread: null },
    } as const
    expect(good(explainStrength('ppm-vv', mLPerRack(2), plate)).assumptions.join(' ')).toContain('data plate')
  })

  it('keeps to the decimal sign of the reader', () => {
    expect(good(explainDose(mLPerMin(10.37), pump(), 'comma')).substituted).toBe('D = 10,37 × 12 / 60')
  })

  it('passes on what stands in the way', () => {
    expect(codeOf(explainFlow(caught([]), conditions()))).toBe('no-runs')
    expect(codeOf(explainStrength('ppm-vv', mLPerRack(2), { ...context(3), rinse: null }))).toBe('missing')
    expect(codeOf(explainTubeFactor(immersed, conditions({ instrument: null })))).not.toBe('ok')
  })
})
