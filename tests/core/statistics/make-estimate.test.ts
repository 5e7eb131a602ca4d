import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { effectiveDegreesOfFreedom } from '#core/statistics/degrees-of-freedom'
import type { BudgetSource } from '#core/statistics/estimate'
import { coverage95 } from '#core/statistics/distributions'
import { estimate, exactly } from '#core/statistics/make-estimate'
import { difference, product, propagate, quotient, scale, sum } from '#core/statistics/propagate'
import { rectangular } from '#core/statistics/rectangular'
import { allFinite, codeOf, good } from '#tests/support/outcomes'
import { seededRandom } from '#tests/support/seeded-random'
import published from '../../references/statistics.json'

const sources = [
  'replicates',
  'density',
  'timer',
  'strength',
  'rinse-volume',
] as const satisfies BudgetSource[]
const line = fc.record({
  source: fc.constantFrom(...sources),
  standard: fc.double(),
  degreesOfFreedom: fc.option(fc.double()),
})
const tame = fc.record({
  source: fc.constantFrom(...sources),
  standard: fc.double({ min: 0.001, max: 1, noNaN: true }),
  degreesOfFreedom: fc.option(fc.integer({ min: 1, max: 50 })),
})
const flow = (value: number) =>
  good(
    estimate(value, 'mL/min', [
      { source: 'replicates', standard: 0.1, degreesOfFreedom: 2 },
      { source: 'cylinder-tolerance', standard: 0.3 },
    ]),
  )
const tameEstimate = fc
  .tuple(fc.double({ min: 1, max: 100, noNaN: true }), fc.array(tame, { minLength: 1, maxLength: 5 }))
  .map(([value, lines]) => good(estimate(value, 'mL', lines)))

describe('uncertainty budget: GUM G.4.1 (JCGM 100:2008, numbers from memory)', () => {
  const { inputs, published: answer, tolerance } = published.gum_G41
  const at = (i: number, source: BudgetSource) =>
    good(
      estimate(100, 'percent', [
        { source, standard: inputs.u_percent[i] ?? 0, degreesOfFreedom: inputs.dof[i] ?? null },
      ]),
    )
  const result = good(
    product([at(0, 'replicates'), at(1, 'timer'), at(2, 'density')], 'percent', { times: 1e-4 }),
  )

  it('combines 0.25, 0.57 and 0.82 % to 1.03 % with 19 degrees of freedom and U = 2.2 %', () => {
    expect(result.value).toBeCloseTo(100, 12)
    expect(Math.abs(result.standard - answer.uc_percent)).toBeLessThan(tolerance.uc_percent)
    expect(Math.abs((result.degreesOfFreedom ?? 0) - answer.dof_eff)).toBeLessThan(tolerance.dof_eff)
    expect(Math.abs(result.coverage - answer.t95_19)).toBeLessThan(0.005)
    expect(Math.abs(result.expanded - answer.U95_percent)).toBeLessThan(tolerance.U95_percent)
  })
})

const degreesKept = (degreesOfFreedom: number) =>
  good(estimate(1, 'mL', [{ source: 'replicates', standard: 0.1, degreesOfFreedom }])).budget[0]
    ?.degreesOfFreedom

describe('a budget', () => {
  it('has shares that sum to one, one line per source, and an interval around the value', () => {
    fc.assert(
      fc.property(tameEstimate, (result) => {
        expect(result.budget.reduce((total, l) => total + l.share, 0)).toBeCloseTo(1, 12)
        expect(new Set(result.budget.map((l) => l.source)).size).toBe(result.budget.length)
        expect(result.low).toBeCloseTo(result.value - result.expanded, 12)
      }),
    )
  })

  it('takes any lines at all: a finite result or a problem', () => {
    fc.assert(
      fc.property(fc.double(), fc.array(line), (value, lines) => allFinite(estimate(value, 'mL', lines))),
      { numRuns: 5000 },
    )
    expect(codeOf(estimate(Number.NaN, 'mL', []))).toBe('cannot-compute')
  })

  it('takes infinitely many degrees of freedom as null, and a nonsense number of them as one', () => {
    expect([Number.POSITIVE_INFINITY, Number.NaN, -3, 4].map(degreesKept)).toEqual([null, 1, 1, 4])
  })

  it('without doubt has no width', () => {
    expect(good(exactly(2.5, 'L'))).toMatchObject({
      standard: 0,
      expanded: 0,
      low: 2.5,
      high: 2.5,
      budget: [],
    })
  })

  it('never has fewer degrees of freedom than its poorest line, nor more than all together', () => {
    const lines = fc.array(
      fc.record({
        standard: fc.double({ min: 0.01, max: 1, noNaN: true }),
        degreesOfFreedom: fc.integer({ min: 1, max: 40 }),
      }),
      { minLength: 1, maxLength: 6 },
    )
    fc.assert(
      fc.property(lines, (all) => {
        const effective = effectiveDegreesOfFreedom(all) ?? Number.NaN
        const each = all.map((l) => l.degreesOfFreedom)
        return (
          effective >= Math.min(...each) * (1 - 1e-12) &&
          effective <= each.reduce((a, b) => a + b, 0) * (1 + 1e-12)
        )
      }),
    )
  })

  it('takes +-0.5 as 0.2887 when every place inside is equally likely (GUM 4.3.7)', () => {
    expect(rectangular(0.5)).toBeCloseTo(0.288675134594813, 14)
  })
})

describe('a spread judged from two values', () => {
  it('is multiplied by its own t of 12.71, and stays the t quantile of the degrees of freedom stated', () => {
    const alone = good(estimate(30, 'mL', [{ source: 'replicates', standard: 0.2, degreesOfFreedom: 1 }]))
    expect(alone.expanded).toBeCloseTo(0.2 * 12.706204736, 8)
    const both = good(
      estimate(30, 'mL', [
        { source: 'replicates', standard: 0.2, degreesOfFreedom: 1 },
        { source: 'cylinder-tolerance', standard: 0.3 },
      ]),
    )
    expect(both.expanded).toBeCloseTo(Math.hypot(0.2 * 12.706204736, 0.3 * 1.959963985), 8)
    expect(coverage95(both.degreesOfFreedom)).toBeCloseTo(both.coverage, 9)
  })

  it('holds the truth in 95 of 100 simulated cases, where Welch-Satterthwaite alone would in 87', () => {
    const chance = seededRandom(11)
    let held = 0
    let byRuleAlone = 0
    const cases = 4000
    for (let i = 0; i < cases; i += 1) {
      const [a, b] = [chance.normal(0, 3 * Math.SQRT2), chance.normal(0, 3 * Math.SQRT2)]
      const found = good(
        estimate((a + b) / 2 + chance.between(-Math.sqrt(3), Math.sqrt(3)), 'mL', [
          { source: 'replicates', standard: Math.abs(a - b) / 2, degreesOfFreedom: 1 },
          { source: 'cylinder-tolerance', standard: 1 },
        ]),
      )
      if (found.low <= 0 && found.high >= 0) held += 1
      const k = coverage95(effectiveDegreesOfFreedom(found.budget))
      if (Math.abs(found.value) <= k * found.standard) byRuleAlone += 1
    }
    expect(held / cases).toBeGreaterThan(0.945)
    expect(byRuleAlone / cases).toBeLessThan(0.9)
  })
})

describe('propagation', () => {
  const two = good(estimate(2, 'mL', [{ source: 'replicates', standard: 0.1, degreesOfFreedom: 4 }]))
  const five = good(estimate(5, 'mL', [{ source: 'timer', standard: 0.2 }]))
  const dense = good(estimate(1.2, 'g/mL', [{ source: 'density', standard: 0.01 }]))

  it('adds relative variances in a product and in a quotient', () => {
    const relative = Math.hypot(0.1 / 2, 0.2 / 5)
    expect(good(product([two, five], 'mL')).standard).toBeCloseTo(10 * relative, 12)
    expect(good(quotient(two, five, 'mL')).standard).toBeCloseTo(0.4 * relative, 12)
  })

  it('lets one density that divides and then multiplies cancel, and only when told it is the same', () => {
    const grams = good(exactly(36, 'g'))
    const volume = good(quotient(grams, dense, 'mL'))
    expect(good(product([volume, dense], 'g', { shared: ['density'] })).standard).toBeCloseTo(0, 12)
    expect(good(product([volume, dense], 'g')).standard).toBeGreaterThan(0.4)
  })

  it('cancels what two results share in their difference', () => {
    const both = good(difference(flow(30), flow(24), { shared: ['cylinder-tolerance'] }))
    expect(both.value).toBe(6)
    expect(both.standard).toBeCloseTo(Math.hypot(0.1, 0.1), 12)
    expect(good(difference(flow(30), flow(24))).standard).toBeCloseTo(Math.hypot(0.1, 0.1, 0.3, 0.3), 12)
    expect(
      good(sum([flow(30), flow(24)], 'mL/min', { shared: ['cylinder-tolerance'] })).standard,
    ).toBeCloseTo(Math.hypot(0.1, 0.1, 0.6), 12)
  })

  it('a factor of zero keeps its uncertainty, a divisor of zero is a problem', () => {
    const zero = good(estimate(0, 'mL', [{ source: 'replicates', standard: 0.1, degreesOfFreedom: 2 }]))
    expect(good(product([zero, five], 'mL')).standard).toBeCloseTo(0.5, 12)
    expect(codeOf(quotient(five, zero, 'mL'))).toBe('cannot-compute')
  })

  it('scaling changes the unit and nothing about the shares', () => {
    fc.assert(
      fc.property(tameEstimate, fc.double({ min: 0.01, max: 1000, noNaN: true }), (result, factor) => {
        const scaled = good(scale(result, factor, 'L'))
        expect(scaled.standard / scaled.value).toBeCloseTo(result.standard / result.value, 10)
        scaled.budget.forEach((l, i) =>
          expect(l.share).toBeCloseTo(result.budget[i]?.share ?? Number.NaN, 10),
        )
      }),
    )
  })

  it('carries the word predicted along, and any sensitivity at all', () => {
    const forecast = good(estimate(3, 'mL', [], { predicted: true }))
    expect(good(product([two, forecast], 'mL')).predicted).toBe(true)
    fc.assert(
      fc.property(tameEstimate, fc.double(), fc.double(), (of, sensitivity, value) =>
        allFinite(propagate(value, 'mL', [{ of, sensitivity }], { shared: ['density'] })),
      ),
    )
  })
})
