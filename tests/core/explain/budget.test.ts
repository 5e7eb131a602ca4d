import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { decide } from '#core/dose/decide'
import { candidate } from '#core/drawdown/choose-cylinder'
import { testFlow } from '#core/drawdown/test-flow'
import { inputAlternatives, instrumentAlternatives, runAlternatives } from '#core/explain/alternatives'
import { budgetSummary, explainUncertainty } from '#core/explain/budget'
import { explainDecision } from '#core/explain/decision'
import type { Instrument } from '#core/records/index'
import { estimate } from '#core/statistics/make-estimate'
import { context, quat } from '#tests/core/dose/records'
import { caught, conditions, cylinder, mL, product, tube } from '#tests/core/drawdown/records'
import { arithmetic } from '#tests/support/arithmetic'
import { allFinite, good } from '#tests/support/outcomes'
import worked from '../../references/drawdown.json'

const { flow, state } = testFlow(caught(worked.drawdown_5rep.V), conditions())
const example = good(flow)
if (state === null) throw new Error('the worked example has a state')

const tools = (list: readonly Instrument[]) =>
  list.map((one) =>
    good(
      candidate(
        { method: 'catch', tubeImmersed: false },
        { product: product(), tube: tube(), rollers: null },
        one,
      ),
    ),
  )

describe('what the doubt is made of', () => {
  it('worked example: the cylinder is 85 % of it, and a class A one brings ±0.62 to what the budget then gives', () => {
    const alternatives = instrumentAlternatives(state, [], [], 'catch')
    const summary = budgetSummary(example, alternatives)
    const classA = good(
      testFlow(
        caught(worked.drawdown_5rep.V),
        conditions({ instrument: cylinder({ tolerance: mL('0.25') }) }),
      ).flow,
    )
    expect(summary.best?.expanded).toBeCloseTo(classA.expanded, 12)
    expect(summary.text).toBe(
      `The cylinder is 85 % of it: a 50 mL class A cylinder would bring it from ±0.62 to ±${classA.expanded.toFixed(2)} mL/min.`,
    )
    expect(summary.lines.map((l) => l.source)).toEqual(['cylinder-tolerance', 'replicates'])
  })

  it('says halve when it halves', () => {
    const quiet = testFlow(
      caught([22, 22.1, 22, 21.9, 22]),
      conditions({ instrument: cylinder({ graduation: mL('0.1') }) }),
    )
    if (quiet.state === null) throw new Error('a series with a flow')
    const own = cylinder({ id: 'own', name: 'good 25 mL cylinder', capacity: mL(25), tolerance: mL('0.25') })
    const summary = budgetSummary(
      good(quiet.flow),
      instrumentAlternatives(quiet.state, tools([own]), [own], 'catch').slice(0, 1),
    )
    expect(summary.text).toMatch(/: your good 25 mL cylinder would halve this\.$/)
  })

  it('more runs help where scatter is the trouble, most of all a third run', () => {
    const two = testFlow(caught([30.4, 29.6]), conditions())
    if (two.state === null) throw new Error('a series with a flow')
    const summary = budgetSummary(good(two.flow), runAlternatives(two.state))
    expect(summary.best?.expanded).toBeLessThan(0.4 * good(two.flow).expanded)
    expect(summary.text).toContain('The scatter between runs is')
  })

  it('measuring what was assumed is offered only when it was assumed', () => {
    const measured = context(3)
    expect(inputAlternatives(measured)).toEqual([])
    const plate = {
      rinse: { kind: 'data-plate', perRack: { value: '3', unit: 'L' }, spread: null },
      product: product({ strength: quat(10) }),
    } as const
    expect(inputAlternatives(plate).map((a) => a.source)).toEqual(['rinse-volume', 'strength'])
  })

  it('names no remedy that would not help, and nothing when nothing is in doubt', () => {
    expect(budgetSummary(example, [{ source: 'density', label: 'x', factor: 0 }]).best).toBeNull()
    expect(budgetSummary(example, []).text).toBe('The cylinder is 85 % of it.')
    expect(budgetSummary(good(estimate(1, 'mL', [])), []).text).toBe('Nothing here is in doubt.')
  })

  it('never promises a wider interval than there is', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 2, noNaN: true }), (factor) => {
        const summary = budgetSummary(example, [{ source: 'replicates', label: 'more runs', factor }])
        return allFinite(summary) && (summary.best === null || summary.best.expanded < example.expanded)
      }),
    )
  })
})

describe('workings of uncertainty and decision', () => {
  it('the numbers put in give U', () => {
    const working = explainUncertainty(example)
    expect(arithmetic(working.substituted)).toBeCloseTo(worked.drawdown_5rep.U_q, 3)
    expect(working.assumptions).toHaveLength(1)
  })

  it('a forecast says that it is one, a pair of runs that it is thin', () => {
    expect(explainUncertainty(good(testFlow(caught([30]), conditions()).flow)).assumptions[0]).toContain(
      'Predicted',
    )
    expect(
      explainUncertainty(good(testFlow(caught([30.4, 29.6]), conditions()).flow)).assumptions[1],
    ).toContain('third run')
  })

  it('a decision shows the room to the nearest edge beside U', () => {
    const value = good(estimate(333, 'ppm-vv', [{ source: 'replicates', standard: 4 }]))
    const working = explainDecision(
      decide(value, { basis: 'ppm-vv', low: 300, target: 330, high: 350 }, null),
    )
    expect(working.result).toMatchObject({ symbol: 'room', value: 17, unit: 'ppm v/v product' })
    // U = 1.959964 x 4, the 97.5 % point of the normal distribution from printed tables
    expect(working.substituted).toBe('|333 − 350| = 17 ≥ 7.8399: in, proved')
    const out = decide(value, { basis: 'ppm-vv', low: 300, target: 315, high: 330 }, null)
    expect(explainDecision(out).substituted).toBe('|333 − 330| = 3 ≤ 7.8399: out, not yet proved')
    expect(explainDecision(out).result.symbol).toBe('distance')
  })
})
