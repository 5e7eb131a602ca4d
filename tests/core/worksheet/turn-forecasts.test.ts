import { describe, expect, it } from 'vitest'
import type { Step } from '#core/records/index'
import { entry } from '#core/units/entry'
import { computeWorksheet } from '#core/worksheet/compute'
import { playTakenUp } from '#core/worksheet/play-taken-up'
import { turnForecasts, type TurnForecast } from '#core/worksheet/turn-forecasts'
import {
  caught,
  closing,
  cylinder,
  machine,
  product,
  pump,
  run,
  site,
  uuid,
  visit,
  work,
} from '../../support/make-site'

const rinseAid = product()
const glass = cylinder({ graduation: entry('0.1', 'mL'), tolerance: entry('0.1', 'mL') })
const own = pump({
  productId: rinseAid.id,
  window: { basis: 'mL-per-rack', low: '3.3', target: '3.6', high: '3.9' },
})
const kitchen = machine({ pumps: [own] })
const at = '2026-03-09T08:30:00.000Z'

/** Three runs of a minute that scatter by half a percent around a flow, mL/min. */
const test = (flow: number): Step =>
  caught(
    [0.995, 1, 1.005].map((part) => run(entry((flow * part).toFixed(3), 'mL'))),
    { instrumentId: glass.id },
  )
const turn = (eighths: number): Step => ({ kind: 'turn', id: uuid(), at, eighths })
const tube = (): Step => ({ kind: 'tube-fitted', id: uuid(), at })

/** Visits of one pump, the last one open. */
function visits(...all: readonly (readonly Step[])[]): {
  readonly forecasts: readonly TurnForecast[]
  readonly takenUp: (visit: number) => boolean
} {
  const records = all.map((steps, i) =>
    visit({
      startedAt: `2026-0${i + 1}-09T08:10:00.000Z`,
      work: [work(own.id, steps)],
      closing: i < all.length - 1 ? closing : null,
    }),
  )
  const place = site({ machines: [kitchen], visits: records })
  const worksheet = computeWorksheet({
    site: place,
    products: [rinseAid],
    instruments: [glass],
    settings: null,
    asOf: '2026-09-10',
  })
  const last = records.at(-1)
  return {
    forecasts: turnForecasts(place, worksheet, [kitchen], { visitId: last?.id ?? '', pumpId: own.id }),
    takenUp: (index) => {
      const before = worksheet.visits[index - 1]?.pumps[0]?.asLeft ?? null
      const left = before?.flow.ok === true ? before.flow.value : null
      return playTakenUp(all[index] ?? [], worksheet.visits[index]?.pumps[0]?.asFound ?? null, {
        left: left === null ? null : { flow: left.value, expanded: left.expanded },
        turned: (all[index - 1] ?? []).some((step) => step.kind === 'turn'),
      })
    },
  }
}

// a screw that gives 8 mL/min more for each turn, one mL/min an eighth
const taught = [test(20), turn(3), test(23), turn(1), test(24)]

describe('what was foretold of a turn', () => {
  it('holds what a straight screw then gives, and says how many eighths were really turned', () => {
    const { forecasts } = visits(taught, [test(20), turn(2), test(22), turn(2), test(24)])
    expect(forecasts.map((one) => [one.eighths, one.within])).toEqual([
      [2, true],
      [2, true],
    ])
    const [first, second] = forecasts
    if (!first?.expected || !second?.expected) throw new Error('nothing was foretold')
    expect(first.expected.value).toBeCloseTo(22, 0)
    // what the first turn taught makes the second forecast no wider
    expect(second.expected.expanded).toBeLessThanOrEqual(first.expected.expanded * 1.05)
  })

  it('is missed by a screw that does nothing', () => {
    const { forecasts } = visits(taught, [test(20), turn(4), test(20)])
    expect(forecasts).toHaveLength(1)
    expect(forecasts[0]).toMatchObject({ eighths: 4, within: false })
    expect(forecasts[0]?.expected?.low).toBeGreaterThan(20)
  })

  it('is nothing where nothing is known of the screw, and something once it has been turned', () => {
    const { forecasts } = visits([test(20), turn(3), test(23), turn(1), test(24)])
    expect(forecasts[0]).toMatchObject({ eighths: 3, expected: null, within: null })
    expect(forecasts[1]).toMatchObject({ eighths: 1, within: true })
  })

  it('does not reach across a new tube, nor to a turn that was never timed', () => {
    expect(visits(taught, [test(20), turn(2), tube(), test(26), turn(1)]).forecasts).toEqual([])
  })
})

describe('play of the screw', () => {
  it('is taken up after a turn of this visit, and after one of the last visit while the flow is what was left', () => {
    expect(visits(taught, [turn(1), test(25)]).takenUp(1)).toBe(true)
    expect(visits(taught, [test(24.02)]).takenUp(1)).toBe(true)
  })

  it('is not known when the flow moved, a tube was changed, or nobody ever wrote down a turn', () => {
    expect(visits(taught, [test(20)]).takenUp(1)).toBe(false)
    expect(visits(taught, [tube(), test(24)]).takenUp(1)).toBe(false)
    expect(visits([test(24)], [test(24)]).takenUp(1)).toBe(false)
  })
})
