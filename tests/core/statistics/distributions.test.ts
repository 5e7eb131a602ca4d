import * as fc from 'fast-check'
import jstat from 'jstat'
import { describe, expect, it } from 'vitest'
import {
  coverage95,
  normalCdf,
  normalQuantile,
  tCdf,
  tQuantile,
  tTwoSided,
} from '#core/statistics/distributions'
import drawdown from '../../references/drawdown.json'
import published from '../../references/statistics.json'

describe("Student's t", () => {
  it.each(published.t_two_sided_95.rows)(
    '0.975 quantile at $df degrees of freedom is $published as printed',
    (row) => {
      expect(Math.abs(coverage95(row.df) - row.published)).toBeLessThanOrEqual(
        published.t_two_sided_95.tolerance,
      )
      expect(coverage95(row.df)).toBeCloseTo(row.computed, 8)
    },
  )

  it.each(Object.entries(drawdown.t975))('0.975 quantile at %s degrees of freedom is %d', (df, value) => {
    expect(coverage95(Number(df))).toBeCloseTo(value, 6)
  })

  it('agrees with a second library (jStat) over probabilities and degrees of freedom', () => {
    for (const df of [1, 1.5, 2, 3, 4.7, 9, 19, 33.3, 120, 171.9, 1000])
      for (const p of [0.005, 0.025, 0.1, 0.3, 0.6, 0.9, 0.975, 0.995, 0.9995]) {
        const other = jstat.jStat.studentt.inv(p, df)
        expect(Math.abs(tQuantile(p, df) - other)).toBeLessThan(1e-6 * Math.max(1, Math.abs(other)))
        expect(tCdf(other, df)).toBeCloseTo(p, 6)
      }
  })

  it('turns into the normal distribution for very many and infinitely many degrees of freedom', () => {
    expect(tQuantile(0.975, null)).toBeCloseTo(1.959963984540054, 12)
    expect(tQuantile(0.975, 1e8)).toBeCloseTo(1.959963984540054, 6)
    // The library itself answers 0 here.
    expect(tQuantile(0.975, 1e20)).toBeCloseTo(1.959963984540054, 12)
  })

  it('quantile and probability undo each other', () => {
    const df = fc.double({ min: 1, max: 1e6, noNaN: true })
    const p = fc.double({ min: 0.001, max: 0.999, noNaN: true })
    fc.assert(
      fc.property(
        p,
        df,
        (share, freedom) => Math.abs(tCdf(tQuantile(share, freedom), freedom) - share) < 1e-6,
      ),
    )
    fc.assert(fc.property(p, (share) => Math.abs(normalCdf(normalQuantile(share)) - share) < 1e-9))
  })

  it('answers any pair of doubles with a number', () => {
    fc.assert(
      fc.property(fc.double(), fc.option(fc.double()), (x, df) =>
        [tQuantile(x, df), tCdf(x, df), tTwoSided(x, df), normalCdf(x), normalQuantile(x)].every(
          Number.isFinite,
        ),
      ),
    )
  })
})
