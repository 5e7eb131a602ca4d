import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lineFit } from '#core/statistics/line-fit'
import { slopeTest } from '#core/statistics/slope-test'
import { theilSen } from '#core/statistics/theil-sen'
import { digits } from '#tests/support/digits'
import { allFinite, codeOf, good } from '#tests/support/outcomes'
import drawdown from '../../references/drawdown.json'
import published from '../../references/statistics.json'

const norris = Object.freeze(published.strd_Norris.data_y_x.map(([y = 0, x = 0]) => ({ x, y })))
const table = (data: { readonly x: readonly number[]; readonly y: readonly number[] }) =>
  data.x.map((x, i) => ({ x, y: data.y[i] ?? 0 }))
const point = fc.record({ x: fc.double(), y: fc.double() })

describe('line fit: NIST StRD Norris', () => {
  const fit = good(lineFit(norris))
  const { certified } = published.strd_Norris

  it.each([
    ['slope', fit.slope, certified.B1, 14],
    ['intercept', fit.intercept, certified.B0, 12],
    ['standard error of the slope', fit.slopeError, certified.sd_B1, 12],
    ['standard error of the intercept', fit.interceptError, certified.sd_B0, 12],
    ['residual standard deviation', fit.residualDeviation, certified.residual_sd, 12],
    ['R squared', fit.rSquared, certified.R2, 14],
  ] as const)('%s to at least 12 digits', (_, found, value, wanted) => {
    expect(digits(found ?? Number.NaN, Number(value))).toBeGreaterThan(wanted)
  })

  it('F, the square of the slope t, to at least 11 digits', () => {
    expect(digits((slopeTest(fit)?.t ?? 0) ** 2, Number(certified.F))).toBeGreaterThan(11)
  })
})

describe('line fit', () => {
  it('finds the rise of five draw-downs: slope, t and p of the worked example', () => {
    const test = slopeTest(good(lineFit(drawdown.rising.V.map((y, x) => ({ x, y })))))
    expect(test?.slope).toBeCloseTo(drawdown.rising.slope, 12)
    expect(test?.t).toBeCloseTo(drawdown.rising.t, 9)
    expect(test?.p).toBeCloseTo(drawdown.rising.p, 9)
  })

  it('through two points gives the line and claims no error for it', () => {
    const fit = good(
      lineFit([
        { x: 0, y: 1 },
        { x: 2, y: 5 },
      ]),
    )
    expect(fit).toMatchObject({ slope: 2, intercept: 1, slopeError: null })
    expect(slopeTest(fit)).toBeNull()
  })

  it('says what is wrong with one point, and with points at one x', () => {
    expect(codeOf(lineFit([{ x: 1, y: 1 }]))).toBe('too-few-runs')
    expect(
      lineFit([
        { x: 1, y: 1 },
        { x: 1, y: 2 },
      ]),
    ).toEqual({
      ok: false,
      problem: { code: 'cannot-compute', reason: 'no-spread-in-x' },
    })
  })

  it('takes any points and never answers with NaN or infinity', () => {
    fc.assert(
      fc.property(fc.array(point, { maxLength: 12 }), (points) => {
        const fit = lineFit(points)
        return allFinite(fit) && allFinite(theilSen(points)) && (!fit.ok || allFinite(slopeTest(fit.value)))
      }),
    )
  })
})

describe('Theil-Sen line', () => {
  it('is not turned by one wild point (Helsel and Hirsch, chapter 10; data from memory)', () => {
    const { data, published: line } = published.theil_sen_outlier
    expect(good(theilSen(table(data)))).toEqual(line)
  })

  it('takes the mean of the two middle slopes of an even number (exact fractions)', () => {
    const { data, exact } = published.theil_sen_derived
    const found = good(theilSen(table(data)))
    expect(found.slope).toBeCloseTo(exact.slope_decimal, 14)
    expect(found.intercept).toBeCloseTo(exact.intercept_decimal, 12)
  })
})
