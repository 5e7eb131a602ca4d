import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { decayOf } from '#core/drift/decay'
import type { TubeTests } from '#core/drift/tubes'
import type { Decay, FlowTest } from '#core/drift/types'
import { lineFit } from '#core/statistics/line-fit'
import { addDays } from '#core/units/days'
import { normals, START, testOn } from './flows'

const tube = (...stretches: readonly (readonly FlowTest[])[]): TubeTests => ({
  from: null,
  to: null,
  stretches,
})
const fitted = (tests: TubeTests): Decay => {
  const decay = decayOf(tests)
  if (!decay.ok) throw new Error(decay.problem.code)
  return decay.value
}

const falls = (start: number, from: number): readonly FlowTest[] => [
  testOn(from, start),
  testOn(from + 30, start * Math.exp(-0.001 * 30)),
]

describe('how fast the flow of a tube falls', () => {
  // Derived: with two visits the rate is ln(q left / q found) / days.
  it('is ln of left over found by the days between two visits', () => {
    const { rate, direction, days } = fitted(tube([testOn(0, 24), testOn(60, 18.6)]))
    expect(rate).toBeCloseTo(Math.log(24 / 18.6) / 60, 14)
    expect(direction).toBe('falling')
    expect(days).toBe(60)
  })

  it('tells the fall of thirty days as a part of the flow, which is never more than there is', () => {
    // a fall of a tenth in three days, ten times over: 0.9^10 is left
    const { in30Days, rate, expanded } = fitted(tube([testOn(0, 20), testOn(3, 18)]))
    expect(in30Days.percent).toBeCloseTo(100 * (1 - 0.9 ** 10), 10)
    const ends = [-1, 1].map((side) => 100 * (1 - Math.exp(-30 * (rate + side * 1e-7 * expanded))))
    expect(in30Days.expanded).toBeCloseTo(((ends[1] ?? 0) - (ends[0] ?? 0)) / 2e-7, 4)
    const gone = fitted(tube([testOn(0, 20), testOn(1, 2)])).in30Days.percent
    expect(gone).toBeLessThanOrEqual(100)
  })

  it('is the least-squares line of ln q over age when nothing was adjusted', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 5, max: 120, noNaN: true }), { minLength: 3, maxLength: 12 }),
        (flows) => {
          const tests = flows.map((flow, i) => testOn(30 * i, flow, 0.01 * flow))
          const line = lineFit(flows.map((flow, i) => ({ x: 30 * i, y: Math.log(flow) })))
          expect(line.ok).toBe(true)
          if (line.ok) expect(fitted(tube(tests)).rate).toBeCloseTo(-line.value.slope, 10)
        },
      ),
    )
  })

  it('does not take an adjustment for wear: only left to found counts', () => {
    const { rate } = fitted(tube(falls(24, 0), falls(30, 30), falls(18, 60)))
    expect(rate).toBeCloseTo(0.001, 12)
  })

  it('leaves the first week of a new tube out while two later tests remain, and says so when it cannot', () => {
    const tests = [testOn(0, 30), testOn(20, 24), testOn(80, 24 * Math.exp(-0.06))]
    const settled = fitted({ ...tube(tests), from: START })
    expect(settled.rate).toBeCloseTo(0.001, 12)
    expect(settled.includesSettling).toBe(false)
    const early = fitted({ ...tube(tests.slice(0, 2)), from: addDays(START, -1) })
    expect(early.includesSettling).toBe(true)
  })

  it('says nothing from a single test, and nothing from two on one day', () => {
    expect(decayOf(tube([testOn(0, 24)]))).toMatchObject({ ok: false, problem: { code: 'missing' } })
    expect(decayOf(tube([testOn(0, 24), testOn(0, 23)]))).toMatchObject({
      ok: false,
      problem: { code: 'cannot-compute', reason: 'no-spread-in-x' },
    })
    expect(decayOf(tube())).toMatchObject({ ok: false })
  })

  it('its 95 % interval holds the true rate about 95 times in 100', () => {
    const draw = normals(7)
    const truth = 0.0012
    let held = 0
    const rounds = 2000
    for (let i = 0; i < rounds; i++) {
      const stretch = (from: number): readonly FlowTest[] =>
        [from, from + 35].map((day) => {
          const flow = 24 * Math.exp(-truth * (day - from))
          return testOn(day, flow * (1 + 0.01 * draw()), 0.01 * flow)
        })
      const { rate, expanded } = fitted(tube(stretch(0), stretch(35), stretch(70)))
      if (Math.abs(rate - truth) <= expanded) held += 1
    }
    expect(held / rounds).toBeGreaterThan(0.94)
    expect(held / rounds).toBeLessThan(0.995)
  })

  it('a rising flow is rising, not wear', () => {
    expect(fitted(tube([testOn(0, 20), testOn(30, 24)])).direction).toBe('rising')
    expect(fitted(tube([testOn(0, 20), testOn(30, 20.1)])).direction).toBe('steady')
  })
})
