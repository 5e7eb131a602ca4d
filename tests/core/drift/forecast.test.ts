import { describe, expect, it } from 'vitest'
import { forecast } from '#core/drift/forecast'
import { leavingDays } from '#core/drift/leaving'
import { flowOf } from './flows'

const decay = { rate: 0.001, standard: 0.0002, degreesOfFreedom: 6 }

describe('the way a flow goes on', () => {
  it('begins at the last test with its own interval and falls as the rate says', () => {
    const flow = flowOf(24, 0.2)
    const path = forecast(flow, decay, 100)
    expect(path[0]).toMatchObject({ days: 0 })
    expect(path[0]?.value).toBeCloseTo(24, 12)
    expect(path.at(-1)?.value).toBeCloseTo(24 * Math.exp(-0.1), 12)
    for (const point of path) {
      expect(point.low).toBeLessThan(point.value)
      expect(point.high).toBeGreaterThan(point.value)
    }
  })

  it('meets the edge of the window on the days that the interval of the leaving day names', () => {
    const flow = flowOf(24, 0.2)
    const { days, earliest, latest } = leavingDays(flow, decay, { low: 21.6, high: 30 })
    expect(forecast(flow, decay, earliest ?? 0).at(-1)?.low).toBeCloseTo(21.6, 9)
    expect(forecast(flow, decay, days ?? 0).at(-1)?.value).toBeCloseTo(21.6, 9)
    expect(forecast(flow, decay, latest ?? 0).at(-1)?.high).toBeCloseTo(21.6, 9)
  })

  it('says nothing of no flow', () => {
    expect(forecast({ value: 0, standard: 1 }, decay, 10)).toEqual([])
  })
})
