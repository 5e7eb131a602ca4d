import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { leavingDays } from '#core/drift/leaving'
import { flowOf, normals } from './flows'

const window = { low: 21.6, high: 26.4 }

const rate = (of: number) => ({ rate: of, standard: 0.0001, degreesOfFreedom: 8 })

describe('when the flow leaves its window', () => {
  it('is the distance to the edge over the rate, on the logarithm', () => {
    const found = leavingDays(flowOf(24, 0.2), { rate: 0.001, standard: 0.0001, degreesOfFreedom: 8 }, window)
    expect(found.edge).toBe('low')
    expect(found.days).toBeCloseTo(Math.log(24 / 21.6) / 0.001, 9)
    expect(found.earliest).toBeGreaterThan(0)
    expect(found.earliest ?? 0).toBeLessThan(found.days ?? 0)
    expect(found.latest ?? 0).toBeGreaterThan(found.days ?? 0)
  })

  it('is the upper edge when the flow rises', () => {
    const found = leavingDays(
      flowOf(24, 0.2),
      { rate: -0.001, standard: 0.0001, degreesOfFreedom: 8 },
      window,
    )
    expect(found.edge).toBe('high')
    expect(found.days).toBeCloseTo(Math.log(26.4 / 24) / 0.001, 9)
  })

  it('is never the lower edge of a window that only says at most', () => {
    const atMost = { low: 0, high: 26.4 }
    const falling = leavingDays(flowOf(24, 0.2), rate(0.001), atMost)
    expect(falling).toEqual({ edge: 'high', days: null, earliest: null, latest: null, prudent: null })
    expect(leavingDays(flowOf(24, 0.2), rate(-0.001), atMost)).toEqual(
      leavingDays(flowOf(24, 0.2), rate(-0.001), window),
    )
  })

  it('has no last day when the rate may be nothing', () => {
    const found = leavingDays(flowOf(24, 0.2), { rate: 0.001, standard: 0.002, degreesOfFreedom: 5 }, window)
    expect(found.latest).toBeNull()
    expect(found.earliest).not.toBeNull()
  })

  it('is now when it is outside already', () => {
    const found = leavingDays(flowOf(20, 0.2), { rate: 0.001, standard: 0.0001, degreesOfFreedom: 8 }, window)
    expect(found).toEqual({ edge: 'low', days: 0, earliest: 0, latest: 0, prudent: 0 })
  })

  it('its interval holds the true day about 95 times in 100', () => {
    const draw = normals(11)
    const truth = Math.log(24 / 21.6) / 0.0012
    let held = 0
    const rounds = 4000
    for (let i = 0; i < rounds; i++) {
      const flow = flowOf(24 * (1 + 0.01 * draw()), 0.24)
      const rate = 0.0012 + 0.0002 * draw()
      const found = leavingDays(flow, { rate, standard: 0.0002, degreesOfFreedom: 1e6 }, window)
      if (truth >= (found.earliest ?? Infinity) && truth <= (found.latest ?? Infinity)) held += 1
    }
    expect(held / rounds).toBeGreaterThan(0.94)
    expect(held / rounds).toBeLessThan(0.96)
  })

  it('keeps its order and its sense for any flow and rate', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 200, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: -0.1, max: 0.1, noNaN: true }),
        fc.double({ min: 0, max: 0.1, noNaN: true }),
        (value, standard, rate, spread) => {
          const found = leavingDays(
            flowOf(value, standard),
            { rate, standard: spread, degreesOfFreedom: 5 },
            window,
          )
          for (const days of [found.days, found.earliest, found.latest])
            if (days !== null) expect(days).toBeGreaterThanOrEqual(0)
          if (found.days !== null && found.earliest !== null)
            expect(found.earliest).toBeLessThanOrEqual(found.days * (1 + 1e-9) + 1e-9)
          if (found.days !== null && found.latest !== null)
            expect(found.latest).toBeGreaterThanOrEqual(found.days * (1 - 1e-9))
        },
      ),
    )
  })
})
