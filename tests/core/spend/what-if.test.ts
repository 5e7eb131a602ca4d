import { describe, expect, it } from 'vitest'
import type { Scenario } from '#core/records/index'
import { asksNothing } from '#core/spend/asks-nothing'
import { scenarioResult } from '#core/spend/scenario'
import reference from '../../references/scenarios.json' with { type: 'json' }
import { good, id, scenarioSite } from './build'

type Change = Scenario['changes'][number]
const change = (over: Partial<Change>): Change => ({
  pumpId: id(11),
  productId: null,
  dosePercent: null,
  pricePerContainer: null,
  containerSize: null,
  strengthPercent: null,
  ...over,
})
const named = (over: Partial<Scenario>): Scenario => ({
  id: id(80),
  name: 'Try',
  racksPercent: null,
  rinseVolumePercent: null,
  changes: [],
  ...over,
})

const diner = reference.scenarios.find((row) => row.id === 'S06')
if (diner === undefined) throw new Error('S06 expected')
const { site, products, settings } = scenarioSite(diner)
const play = (over: Partial<Scenario>) => scenarioResult(site, products, settings, '2026-03-01', named(over))

describe('a what-if asks for nothing', () => {
  it('while every box is empty, or says that all is 100 % of today', () => {
    expect(asksNothing(named({}))).toBe(true)
    expect(asksNothing(named({ racksPercent: '100', rinseVolumePercent: '100.0' }))).toBe(true)
    expect(asksNothing(named({ changes: [change({ dosePercent: '100' })] }))).toBe(true)
  })

  it.each([
    { racksPercent: '101' },
    { rinseVolumePercent: '0' },
    { changes: [change({ dosePercent: '99.5' })] },
    { changes: [change({ productId: id(2) })] },
    { changes: [change({}), change({ pumpId: id(12), pricePerContainer: '60' })] },
    { changes: [change({ containerSize: { value: '5', unit: 'L' } })] },
    { changes: [change({ strengthPercent: '12' })] },
  ] as readonly Partial<Scenario>[])('but no longer with %j', (over) => {
    expect(asksNothing(named(over))).toBe(false)
  })
})

/** Inputs: scenario S06 of tests/references/scenarios.json (161.50 a month); changes worked by hand. */
describe('a what-if', () => {
  it('that changes nothing costs what today costs, without a doubt', () => {
    const result = play({})
    expect(good(result.changePerMonth).toFixed(2)).toBe('0.00')
    expect(good(result.change)).toMatchObject({ value: 0, expanded: 0 })
  })

  it('with 110 % of the racks costs a tenth more', () => {
    const result = play({ racksPercent: '110' })
    expect(good(result.changed.racksPerMonth)).toBeCloseTo(4261.25 * 1.1, 6)
    // by hand, line by line: 27.272, 111.8578125 and 22.3715625 times 1.1, each rounded to the cent
    expect(good(result.changed.costPerMonth).toFixed(2)).toBe('177.65')
    expect(good(result.changePerMonth).toFixed(2)).toBe('16.15')
    expect(good(result.changePerYear).toFixed(2)).toBe('193.80')
  })

  it('of 80 % of one dose saves a fifth of that line, and is as doubtful as a fifth of it', () => {
    const result = play({ changes: [change({ pumpId: id(12), dosePercent: '80' })] })
    expect(good(result.changePerMonth).toFixed(2)).toBe('-22.37')
    const line = good(result.lines[1]?.today.costEstimate)
    expect(good(result.change).standard).toBeCloseTo(0.2 * line.standard, 9)
  })

  it('of another price keeps the litres', () => {
    // 4.26125 L at 80.00 for 10 L = 34.09
    const result = play({ changes: [change({ pricePerContainer: '80.00' })] })
    expect(good(result.lines[0]?.changed.costPerMonth).toFixed(2)).toBe('34.09')
    expect(good(result.lines[0]?.changed.litresPerMonth).value).toBeCloseTo(4.26125, 9)
  })

  it('of a larger container alone keeps the price per litre', () => {
    const result = play({ changes: [change({ containerSize: { value: '20', unit: 'L' } })] })
    expect(good(result.lines[0]?.changed.costPerMonth).toFixed(2)).toBe('27.27')
    expect(good(result.lines[0]?.changed.containersPerMonth)).toBeCloseTo(0.2130625, 9)
  })

  it('of another product costs that product’s price', () => {
    // rinse aid pump on the sanitizer product: 4.26125 L at 2.10
    const result = play({ changes: [change({ productId: id(3) })] })
    expect(good(result.lines[0]?.changed.costPerMonth).toFixed(2)).toBe('8.95')
  })

  it('of half the strength takes twice the dose', () => {
    const bleach = products.map((product) =>
      product.id === id(3)
        ? { ...product, strength: { kind: 'trade-percent' as const, percent: '9.5', measuredOn: null } }
        : product,
    )
    const result = scenarioResult(
      site,
      bleach,
      settings,
      '2026-03-01',
      named({ changes: [change({ pumpId: id(13), strengthPercent: '4.75' })] }),
    )
    expect(good(result.lines[2]?.changed.litresPerMonth).value).toBeCloseTo(2 * 10.653125, 6)
  })

  it('of less water moves every dose with it, so that the strength stays', () => {
    const result = play({ rinseVolumePercent: '90' })
    expect(good(result.changed.costPerMonth).toNumber()).toBeCloseTo(161.5 * 0.9, 1)
  })

  it('that cannot be worked out says why, and today’s figures stand', () => {
    const result = play({ changes: [change({ productId: id(99) })] })
    expect(result.changePerMonth).toMatchObject({ problem: { code: 'not-found' } })
    expect(good(result.today.costPerMonth).toFixed(2)).toBe('161.50')
    expect(play({ racksPercent: '-5' }).changePerMonth).toMatchObject({
      problem: { code: 'number-out-of-range', field: 'scenario.racksPercent' },
    })
  })
})
