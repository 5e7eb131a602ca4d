import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { strengthOverService } from '#core/tank/service'
import { settlesAt } from '#core/tank/step'
import { anyModel, dump, everyNumberFinite, good, tank, wild } from './support'

const main = tank(40, 3)

describe('strength over the service', () => {
  it('stays on 2 g/L all day when charge and recharge are right', () => {
    const day = good(strengthOverService({ model: main, dose: 6, charge: 80, racks: 120, fills: 2 }))
    expect(day.lowest).toBeCloseTo(2, 12)
    expect(day.highest).toBeCloseTo(2, 12)
    expect(day.fills).toEqual([0, 60])
    expect(day.racks).toBe(120)
  })

  it('draws the sag of a short recharge, and every fill as a jump back to the charge', () => {
    const window = { low: 1.8, high: 2.2 }
    const input = { model: main, dose: 4.8, charge: 80, racks: 80, fills: 2, window }
    const day = good(strengthOverService(input))
    // 1.6 + 0.4 exp(-n 3/40), worked by hand: 1.8129 after 8 racks... below 1.8 from the 10th: ln 2 / 0.075 = 9.242
    expect(day.firstBelow).toBe(10)
    expect(day.points.find((each) => each.rack === 40 && !each.fill)?.strength).toBeCloseTo(1.6199, 4)
    expect(day.points.find((each) => each.rack === 40 && each.fill)?.strength).toBe(2)
    expect(day.racksBelow).toBe(2 * 31)
    expect(day.racksAbove).toBe(0)
    expect(day.firstAbove).toBeNull()
  })

  it('shows an overshoot at the start when only the charge is too long', () => {
    const window = { low: 1.8, high: 2.2 }
    const day = good(strengthOverService({ model: main, dose: 6, charge: 120, racks: 60, fills: 1, window }))
    // 2 + exp(-n 3/40) > 2.2 while n < ln 5 / 0.075 = 21.46
    expect(day.firstAbove).toBe(1)
    expect(day.racksAbove).toBe(21)
    expect(day.highest).toBe(3)
  })

  it('shows the climb of a dump-and-refill machine from clean water to m/f', () => {
    const day = good(
      strengthOverService({ model: dump(0.6, 4.467), dose: 8.625, charge: 99, racks: 20, fills: 5 }),
    )
    expect(day.points[0]?.strength).toBe(0)
    expect(day.points[1]?.strength).toBeCloseTo(8.625 / 5.067, 12)
    expect(day.last).toBeCloseTo(8.625 / 4.467, 9)
    expect(day.fills).toEqual([0])
  })

  it('follows one fill over several days when the tank is drained every second day', () => {
    const days = good(strengthOverService({ model: main, dose: 4.8, charge: 80, racks: 50, fills: 0.5 }))
    expect(days.racks).toBe(100)
    expect(days.fills).toEqual([0])
  })

  it('scales the whole course with the doubt about the pump, because charge and dose share it', () => {
    const day = good(
      strengthOverService({ model: main, dose: 4.8, charge: 80, racks: 30, fills: 1, feedUncertainty: 0.05 }),
    )
    for (const each of day.points) {
      expect(each.low).toBeCloseTo(0.95 * each.strength, 12)
      expect(each.high).toBeCloseTo(1.05 * each.strength, 12)
    }
  })

  it('keeps the chart light for a busy conveyor without losing a fill or the rack before it', () => {
    const day = good(
      strengthOverService({ model: tank(110, 2.044), dose: 4.68, charge: 264, racks: 5000, fills: 3 }),
    )
    expect(day.points.length).toBeLessThan(420)
    expect(day.points.filter((each) => each.fill).map((each) => each.rack)).toEqual([0, 1667, 3333])
    expect(day.points.filter((each) => each.rack === 1667)).toHaveLength(2)
    expect(day.racks).toBe(5000)
  })

  it('stays between the charge and where it settles, and counts no rack twice', () => {
    fc.assert(
      fc.property(
        anyModel,
        fc.double({ min: 0, max: 50, noNaN: true }),
        fc.double({ min: 0, max: 500, noNaN: true }),
        fc.integer({ min: 1, max: 300 }),
        fc.integer({ min: 1, max: 5 }),
        (model, dose, charge, racks, fills) => {
          const window = { low: 1, high: 2 }
          const day = good(strengthOverService({ model, dose, charge, racks, fills, window }))
          expect(day.racks).toBe(racks)
          expect((day.racksBelow ?? 0) + (day.racksAbove ?? 0)).toBeLessThanOrEqual(racks)
          expect(day.settlesAt).toBe(settlesAt(model, dose))
          expect(day.lowest).toBeLessThanOrEqual(day.mean * (1 + 1e-12) + 1e-300)
          expect(day.highest).toBeGreaterThanOrEqual(day.mean * (1 - 1e-12) - 1e-300)
        },
      ),
    )
  })

  it('answers any numbers at all with a result or a reason', () => {
    fc.assert(
      fc.property(
        anyModel,
        wild,
        wild,
        wild,
        wild,
        wild,
        (model, dose, charge, racks, fills, feedUncertainty) => {
          const found = strengthOverService({ model, dose, charge, racks, fills, feedUncertainty })
          expect(everyNumberFinite(found)).toBe(true)
        },
      ),
      { numRuns: 300 },
    )
  })
})
