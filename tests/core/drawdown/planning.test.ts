import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { candidate, planTest, rightSize } from '#core/drawdown/choose-cylinder'
import { secondsNeeded } from '#core/drawdown/flow-plan'
import { forecastFlow, pumpRepeatability } from '#core/drawdown/forecast'
import { predictedFlow } from '#core/drawdown/predicted-flow'
import { testFlow } from '#core/drawdown/test-flow'
import type { VolumeDoubt } from '#core/drawdown/types'
import type { Instrument } from '#core/records/index'
import { caught, conditions, cylinder, mL, product, tube } from '#tests/core/drawdown/records'
import { codeOf, good } from '#tests/support/outcomes'
import worked from '../../references/drawdown.json'

/** 50 mL class B read to half a graduation, by the number of readings a run takes. */
const doubt = (readings: 1 | 2, pulsesPerMinute: number | null = null): VolumeDoubt => ({
  reading: Math.sqrt(readings) * (0.5 / Math.sqrt(3)),
  unresolved: 0,
  instrument: { source: 'cylinder-tolerance', standard: 0.5 / Math.sqrt(3) },
  factors: [],
  pulsesPerMinute,
})
const tool = (instrument: Instrument) =>
  good(
    candidate(
      { method: 'catch', tubeImmersed: false },
      { product: product(), tube: tube(), rollers: null },
      instrument,
    ),
  )

describe('predicted uncertainty', () => {
  it('of one 60 s run is that of the worked example: 1.528 %, U (k = 2) 3.056 %', () => {
    const q = good(predictedFlow({ flow: 30, seconds: 60, runs: 1 }, doubt(1, 90)))
    expect(q.standard / 30).toBeCloseTo(worked.single_run.u_rel, 12)
    const part = (source: string) => q.budget.find((l) => l.source === source)?.standard
    expect(part('roller-pulse')).toBeCloseTo(worked.single_run.u_pulse, 12)
    expect(part('reading')).toBeCloseTo(worked.single_run.u_read, 12)
    expect(part('cylinder-tolerance')).toBeCloseTo(worked.single_run.u_tol, 12)
    expect(part('timer')).toBeCloseTo((30 * worked.single_run.u_t) / 60, 12)
  })
})

describe('run time for a wanted precision', () => {
  it.each(Object.entries(worked.t_needed_q30_w1pct))(
    '1 percent at 30 mL/min with %s runs takes %s s each',
    (runs, seconds) => {
      const found = good(secondsNeeded({ flow: 30, runs: Number(runs), relative: 0.01 }, doubt(2, 90)))
      expect(found).toBeCloseTo(seconds, 10)
    },
  )

  it('is the time at which the forecast is as good as wanted', () => {
    const seconds = good(secondsNeeded({ flow: 17, runs: 4, relative: 0.013 }, doubt(2, 90)))
    const q = good(predictedFlow({ flow: 17, seconds, runs: 4 }, doubt(2, 90)))
    expect(q.standard / 17).toBeCloseTo(0.013, 12)
  })

  it('0.25 % with three runs of a pump that repeats to 0.5 % is out of reach; five runs can', () => {
    const wanted = { flow: 30, relative: 0.0025 }
    expect(secondsNeeded({ ...wanted, runs: 3 }, doubt(2))).toMatchObject({
      problem: { reason: 'unreachable-precision' },
    })
    expect(codeOf(secondsNeeded({ ...wanted, runs: 5 }, doubt(2)))).toBe('ok')
    expect(secondsNeeded({ ...wanted, flow: 0, runs: 5 }, doubt(2))).toMatchObject({
      problem: { reason: 'zero-flow' },
    })
  })
})

describe('choosing a cylinder', () => {
  const small = tool(cylinder({ id: '25 A', capacity: mL(25), graduation: mL('0.5'), tolerance: mL('0.17') }))
  const middle = tool(cylinder({ id: '50 B' }))
  const large = tool(cylinder({ id: '100 B', capacity: mL(100), tolerance: mL('1.0') }))

  it('takes the next size, with its own tolerance, when the volume does not fit', () => {
    const wanted = { flow: 30, runs: 3, relative: 0.0076 }
    const plan = good(planTest(wanted, [middle, large]))
    expect(good(secondsNeeded(wanted, middle.doubt)) / 2).toBeGreaterThan(50 / 1.1)
    expect(plan.instrumentId).toBe('100 B')
    expect(plan.seconds).toBeCloseTo(good(secondsNeeded(wanted, large.doubt)), 12)
  })

  it('takes the quickest that fits', () => {
    expect(good(planTest({ flow: 12, runs: 3, relative: 0.01 }, [large, middle, small])).instrumentId).toBe(
      '25 A',
    )
  })

  it('says so when none fits or there is none', () => {
    expect(planTest({ flow: 300, runs: 3, relative: 0.006 }, [small])).toMatchObject({
      problem: { reason: 'unreachable-precision' },
    })
    expect(planTest({ flow: 30, runs: 3, relative: 0.01 }, [])).toMatchObject({
      problem: { needed: 'instrument' },
    })
  })

  it('for 20 mL caught a run takes the 25 mL one, and names the standard size to look for when none is large enough', () => {
    expect(rightSize(20, 60, 'catch', [large, middle, small])).toMatchObject({
      instrumentId: '25 A',
      standardSize: 25,
    })
    expect(rightSize(200, 60, 'catch', [middle, small])).toEqual({
      instrumentId: null,
      standardSize: 250,
      secondsForMarks: null,
    })
    // 20 marks of 0.5 mL are 10 mL, half a minute at 20 mL/min.
    expect(rightSize(20, 60, 'catch', [small]).secondsForMarks).toBeCloseTo(30, 9)
  })

  it('no run it names a cylinder for would nearly empty it: 24 mL do not go into the 25 mL one, 22 mL are not drawn from it', () => {
    const drawn = [tool(cylinder({ id: '25 A', capacity: mL(25) })), tool(cylinder({ id: '50 B' }))]
    expect(rightSize(24, 60, 'catch', drawn)).toMatchObject({ instrumentId: '50 B', standardSize: 50 })
    expect(rightSize(22, 60, 'draw-down', [])).toMatchObject({ standardSize: 50 })
    // A main mark stands at 10 of 100 mL: 85 mL drawn from the top end at 15, ten per cent more end below the scale.
    expect(rightSize(85, 60, 'draw-down', [])).toMatchObject({ standardSize: 250 })
    expect(rightSize(80, 60, 'draw-down', [])).toMatchObject({ standardSize: 100 })
  })

  it('a cylinder with marks too coarse for a run is named only when there is no better one', () => {
    const coarse = tool(cylinder({ id: 'coarse', capacity: mL(25), graduation: mL(5) }))
    expect(rightSize(15, 60, 'catch', [coarse, middle]).instrumentId).toBe('50 B')
    expect(rightSize(15, 60, 'catch', [coarse])).toMatchObject({
      instrumentId: 'coarse',
      secondsForMarks: null,
    })
  })

  it('whatever the flow, a draw-down ten per cent above it still ends on the scale of the cylinder named', () => {
    const sizes = [10, 25, 50, 100, 250, 500]
    const drawn = sizes.map((size) =>
      good(
        candidate(
          { method: 'draw-down', tubeImmersed: false },
          { product: product(), tube: tube(), rollers: null },
          cylinder({ id: `${size}`, capacity: mL(size) }),
        ),
      ),
    )
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 400, noNaN: true }), (flow) => {
        const { instrumentId } = rightSize(flow, 60, 'draw-down', drawn)
        const size = Number(instrumentId)
        expect(size - 1.1 * flow).toBeGreaterThanOrEqual(size / 10 - 1e-6)
      }),
    )
  })
})

describe('forecast of the next test', () => {
  const state = testFlow(
    caught(worked.drawdown_5rep.V),
    conditions({ rollers: { perMinute: '30', count: '3' } }),
  ).state

  it('the same again is about what was found, a better cylinder and longer runs are better', () => {
    if (state === null) throw new Error('the worked example has a state')
    const now = good(forecastFlow(state, { runs: 5, seconds: 60, doubt: state.doubt }))
    const longer = good(forecastFlow(state, { runs: 5, seconds: 90, doubt: state.doubt }))
    const better = good(
      forecastFlow(state, {
        runs: 5,
        seconds: 60,
        doubt: {
          ...state.doubt,
          instrument: { source: 'cylinder-tolerance', standard: 0.25 / Math.sqrt(3) },
        },
      }),
    )
    expect(now.standard).toBeGreaterThan(0.9 * worked.drawdown_5rep.uc)
    expect(now.standard).toBeLessThan(1.1 * worked.drawdown_5rep.uc)
    expect(longer.expanded).toBeLessThan(now.expanded)
    expect(better.expanded).toBeLessThan(now.expanded)
    expect(now.predicted).toBe(true)
  })

  it('takes for the pump what instruments cannot explain, and a usual figure after one run', () => {
    const wild = testFlow(caught([28, 32, 30, 31, 29]), conditions()).state
    const one = testFlow(caught([30]), conditions()).state
    expect(wild === null ? 0 : pumpRepeatability(wild)).toBeGreaterThan(0.04)
    expect(one === null ? 0 : pumpRepeatability(one)).toBe(0.005)
  })
})
