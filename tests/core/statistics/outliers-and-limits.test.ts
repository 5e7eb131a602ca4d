import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { grubbs, grubbsCritical } from '#core/statistics/grubbs'
import { individualsLimits } from '#core/statistics/individuals-chart'
import { median } from '#core/statistics/median'
import { allFinite, codeOf, good } from '#tests/support/outcomes'
import published from '../../references/statistics.json'

describe("Grubbs' test", () => {
  it.each(published.grubbs.rows)(
    'critical values for $n readings are those of DIN 32645 and DIN 38402',
    (row) => {
      expect(Math.abs(grubbsCritical(row.n, 0.05, 1) - row.one_sided_published)).toBeLessThan(
        published.grubbs.tolerance,
      )
      expect(Math.abs(grubbsCritical(row.n, 0.05, 2) - row.two_sided_published)).toBeLessThan(
        published.grubbs.tolerance,
      )
      expect(grubbsCritical(row.n, 0.05, 1)).toBeCloseTo(row.one_sided_computed, 5)
      expect(grubbsCritical(row.n, 0.05, 2)).toBeCloseTo(row.two_sided_computed, 5)
    },
  )

  it('finds 245.57 among the readings of NIST/SEMATECH e-Handbook 1.3.5.17.1', () => {
    const { data, G_max, one_sided_crit_n8 } = published.grubbs.example
    const found = good(grubbs(data))
    expect(data[found.index]).toBe(245.57)
    // Printed cut, not rounded: 2.46876.
    expect(Math.abs(found.statistic - G_max)).toBeLessThan(1e-4)
    expect(grubbsCritical(8, 0.05, 1)).toBeCloseTo(one_sided_crit_n8, 3)
    expect(found.isOutlier).toBe(true)
  })

  it('needs three readings that differ', () => {
    expect(codeOf(grubbs([1, 2]))).toBe('too-few-runs')
    expect(grubbs([3, 3, 3])).toEqual({
      ok: false,
      problem: { code: 'cannot-compute', reason: 'no-scatter' },
    })
  })
})

describe('individuals chart', () => {
  it('has the limits of NIST/SEMATECH e-Handbook 6.3.2.2', () => {
    const { data, published: limits, tolerance } = published.nist_individuals
    const found = good(individualsLimits(data))
    expect(Math.abs(found.mean - limits.mean)).toBeLessThan(tolerance.mean)
    expect(Math.abs(found.meanMovingRange - limits.MR_bar)).toBeLessThan(tolerance.MR_bar)
    expect(Math.abs(found.upper - limits.UCL)).toBeLessThan(tolerance.UCL)
    expect(Math.abs(found.lower - limits.LCL)).toBeLessThan(tolerance.LCL)
    // Quoted with D4 taken as 3.26713; the tabled factor is 3.267.
    expect(found.upperMovingRange).toBeCloseTo(published.nist_individuals.also_quoted.MR_UCL, 3)
  })

  it('uses the factors of ASTM E2587 for ranges of two', () => {
    const row = published.range_constants.rows.find((r) => r.n === 2)
    const found = good(individualsLimits([0, 1]))
    expect(3 / (found.upper - found.mean)).toBeCloseTo(row?.d2 ?? Number.NaN, 12)
    expect(found.upperMovingRange).toBeCloseTo(row?.D4 ?? Number.NaN, 12)
  })
})

describe('any numbers', () => {
  it('give a finite answer or a problem', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double()),
        (values) => allFinite(grubbs(values)) && allFinite(individualsLimits(values)),
      ),
    )
  })

  it('have their median between the least and the greatest', () => {
    const numbers = fc.array(fc.double({ noNaN: true, noDefaultInfinity: true }), { minLength: 1 })
    fc.assert(
      fc.property(numbers, (values) => {
        const middle = median(values) ?? Number.NaN
        return middle >= Math.min(...values) && middle <= Math.max(...values)
      }),
    )
    expect(median([])).toBeNull()
    expect(median([3, 1, 2])).toBe(2)
    expect(median([4, 1, 2, 3])).toBe(2.5)
  })
})
