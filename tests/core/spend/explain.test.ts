import { describe, expect, it } from 'vitest'
import { explainCost, explainLitres, explainRacks } from '#core/explain/spend'
import { steadyUse } from '#core/spend/ahead'
import { explainReconciliation, explainReorder } from '#core/explain/spend-stock'
import { ok } from '#core/outcome'
import { reconcile } from '#core/spend/reconcile'
import { reorder } from '#core/spend/reorder'
import { siteUse } from '#core/spend/site-use'
import { estimate } from '#core/statistics/make-estimate'
import { Decimal } from '#core/units/decimal'
import reference from '../../references/scenarios.json' with { type: 'json' }
import { aProduct, good, scenarioSite } from './build'

/** Source: scenario S01 of tests/references/scenarios.json. */
describe('the working of a month', () => {
  const row = reference.scenarios.find((one) => one.id === 'S01')
  if (row === undefined) throw new Error('S01 expected')
  const { site, products, settings } = scenarioSite(row)
  const { inputs, racks } = siteUse(site, products, settings, '2026-03-01')
  const detergent = inputs[1]
  if (detergent === undefined) throw new Error('two pumps expected')

  it('of the detergent shows racks, dose, fills and charge that make its litres', () => {
    const working = good(explainLitres(detergent))
    const put = Object.fromEntries(working.inputs.map((one) => [one.symbol, one.value]))
    expect(put).toMatchObject({ N: 1369.6875, D: 4, F: 30.4375, m: 25 })
    expect(((put['N'] ?? 0) * (put['D'] ?? 0) + (put['F'] ?? 0) * (put['m'] ?? 0)) / 1000).toBeCloseTo(
      working.result.value,
      9,
    )
    expect(working.substituted).toBe('L = (1369.7 × 4 + 30.438 × 25) / 1000')
    expect(working.assumptions.join(' ')).toContain('priming')
  })

  it('of the detergent says how well it is known, and what to do better first: count the racks', () => {
    // by hand: racks stated to 10 % move 5.479 L of it by 0.548 L, far more than flow (1 %), seconds (2 %) or fills
    const working = good(explainLitres(detergent))
    expect(working.assumptions[0]).toMatch(/^Known to ± 1\.\d L .* because of the count of racks\.$/u)
  })

  it('of the money shows the price that made it, with the sign of the country', () => {
    const working = good(explainCost(detergent, 'comma'))
    expect(working.result.value).toBe(25.58)
    expect(working.substituted).toBe('M = 6,2397 × 4,1')
  })

  it('of the racks shows where they are known from', () => {
    const working = explainRacks(good(racks[0]?.rate), detergent.span)
    expect(working.inputs[0]?.name).toContain('as stated')
    expect(working.result.value).toBeCloseTo(1369.6875, 9)
  })
})

const level = (litres: number) => ok({ litres: new Decimal(litres), standard: 0.3, partUnknown: false })

describe('the working of stock', () => {
  const product = aProduct({
    leadTimeDays: '4',
    containerSize: { value: '10', unit: 'L' },
  })

  it('against theory gives the z of the reconciliation', () => {
    const row = reconcile({
      product,
      from: '2026-01-01',
      to: '2026-02-01',
      opening: level(24),
      closing: level(8),
      delivered: ok(new Decimal(30)),
      theory: estimate(40, 'L', [{ source: 'racks', standard: 1 }]),
      drift: null,
      counted: true,
      container: 10,
    })
    const working = good(explainReconciliation(row))
    expect(working.result.value).toBeCloseTo(6 / Math.sqrt(0.18 + 1), 9)
    expect(working.substituted).toBe('z = 6 / √(0.42426² + 1²)')
  })

  it('of an order adds lead-time use and safety stock', () => {
    const advice = good(
      reorder({
        product,
        currency: 'EUR',
        asOf: '2026-03-01',
        stock: estimate(20, 'L', []),
        perMonth: estimate(30.4375, 'L/month', []),
        serviceLevel: '95',
        coverDays: 30,
        ahead: steadyUse(1),
      }),
    )
    const working = explainReorder(advice)
    const [d, lead, safety] = working.inputs.map((one) => one.value)
    expect((d ?? 0) * (lead ?? 0) + (safety ?? 0)).toBeCloseTo(working.result.value, 12)
  })
})
