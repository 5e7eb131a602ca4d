import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { doseContext, onBasis } from '#core/dose/on-basis'
import { requiredDose } from '#core/dose/required-dose'
import { requiredFlow } from '#core/dose/required-flow'
import { explainStrength } from '#core/explain/strength'
import { explainTank } from '#core/explain/tank'
import type { Machine, Pump } from '#core/records/index'
import { initialCharge } from '#core/spend/charges'
import { perRack } from '#core/spend/per-rack'
import { estimate, exactly } from '#core/statistics/make-estimate'
import { cascadeOverService } from '#core/tank/cascade-service'
import { tankOfPump } from '#core/tank/tank-of-pump'
import { arithmetic } from '#tests/support/arithmetic'
import { machine, product, pump } from '#tests/core/sanitize/records'
import { everyNumberFinite, good, tank, wild } from './support'

const soap = product('soap', { density: { value: '1.2', unit: 'g/mL' } })
const seconds = { value: '2.5', unit: 's' } as const
const inSecond = pump('above', 'soap', {
  name: 'Detergent, second tank',
  feeds: 'upstream-tank',
  doseSeconds: seconds,
  window: { basis: 'g-per-L-tank', low: '1.8', target: '2.0', high: '2.2' },
})
const inWash = pump('wash', 'soap', {
  name: 'Detergent, wash tank',
  feeds: 'wash-tank',
  doseSeconds: seconds,
  window: { basis: 'g-per-L-tank', low: '1.8', target: '2.0', high: '2.2' },
})
const weakSecond: Pump = {
  ...inSecond,
  window: { basis: 'g-per-L-tank', low: '0.7', target: '0.8', high: '0.9' },
}

const conveyor = (pumps: readonly Pump[], changes: Partial<Machine> = {}): Machine =>
  machine({
    class: 'conveyor-multi-tank',
    rinse: { kind: 'measured', perRack: { value: '3.0', unit: 'L' }, spread: '0' },
    racksPerDay: '200',
    wash: {
      kind: 'tank',
      volume: { value: '60', unit: 'L' },
      drainAndFillsPerDay: '2',
      closure: 'continuous',
      carriedOut: { value: '0', unit: 'L' },
      upstream: { volume: { value: '40', unit: 'L' } },
      feeding: 'with-rinse',
    },
    pumps,
    ...changes,
  })

/** Tested at 120 mL/min, so 2.5 s are 5 mL, 6 g per rack. */
const tested = (millilitres = 5) => ({
  flow: estimate(120, 'mL/min', [{ source: 'replicates', standard: 1.2, degreesOfFreedom: 2 }]),
  dose: estimate(millilitres, 'mL/rack', [{ source: 'flow', standard: millilitres / 100 }]),
})

const worked = (of: Machine, one: Pump, millilitres = 5) => {
  const found = tankOfPump({ machine: of, pump: one, product: soap, tested: tested(millilitres) })
  if (found === null) throw new Error('no tank')
  return found
}

// Worked by hand from the balance of two stirred tanks in a row; no published example of this duty was found.
describe('a pump that feeds the second tank, 40 L, which overflows into the wash tank, 60 L, with 3.0 L a rack', () => {
  const found = worked(conveyor([inSecond]), inSecond)

  it('settles its own tank at 6 g / 3 L = 2.00 g/L and the wash tank at the same', () => {
    expect(good(found.settlesAt).value).toBeCloseTo(2, 12)
    expect(good(found.other?.settlesAt ?? { ok: true, value: 0 })).toBeCloseTo(2, 12)
    expect(found.other).toMatchObject({ which: 'wash-tank', fedBy: null })
  })

  it('charges 80 g in 33.3 s, and 100 mL go into the wash tank by hand; the recharge is 2.50 s', () => {
    expect(good(found.initialCharge).value).toBeCloseTo(33.3333, 4)
    expect(good(found.recharge).value).toBeCloseTo(2.5, 12)
    if (found.other?.chargeByHand === undefined || found.other.chargeByHand === null) throw new Error('none')
    expect(good(found.other.chargeByHand).value).toBeCloseTo(100, 9)
  })

  it('is tested after 40 racks, the wash tank after 3 x (13.3 + 20) = 100', () => {
    expect(good(found.racksBeforeTest)).toBe(40)
    expect(good(found.other?.racksBeforeTest ?? { ok: true, value: 0 })).toBe(100)
  })

  it('leaves the wash tank at 2 (1 - exp(-n 3/60)) while its own stands: 1.264 g/L after 20 racks', () => {
    const own = good(found.service)
    const other = good(found.other?.service ?? found.service)
    const at = (rack: number): number => other.points.find((one) => one.rack === rack)?.strength ?? NaN
    expect(own.lowest).toBeCloseTo(2, 12)
    expect(at(0)).toBe(0)
    for (const rack of [1, 20, 60]) expect(at(rack)).toBeCloseTo(2 * -Math.expm1(-rack / 20), 9)
    expect(at(20)).toBeCloseTo(1.2642, 4)
    expect(other.racksBelow).toBeGreaterThan(0)
  })
})

describe('two pumps of one product, the second tank held at 0.8 g/L, the wash tank at 2.0', () => {
  const both = conveyor([weakSecond, inWash])
  const context = doseContext(both, soap, inWash)

  it('the wash tank needs only (2.0 - 0.8) x 3.0 = 3.6 g a rack: 1.50 s instead of 2.50', () => {
    expect(good(worked(both, inWash).recharge).value).toBeCloseTo(1.5, 12)
    expect(good(requiredDose('g-per-L-tank', 2, context))).toBeCloseTo(3, 12)
    expect(good(requiredFlow(inWash, context)).target).toBeCloseTo(72, 9)
  })

  it('3 mL a rack settle it at 2.0 g/L, on the basis the decision is made on as well', () => {
    expect(good(worked(both, inWash, 3).settlesAt).value).toBeCloseTo(2, 12)
    const decided = good(onBasis('g-per-L-tank', good(exactly(3, 'mL/rack')), context))
    expect(decided.value).toBeCloseTo(2, 12)
    // the second tank is known as well as its window is narrow: JCGM 100 4.3.7, 0.1 / sqrt 3
    expect(decided.budget.find((line) => line.source === 'tank-above')?.standard).toBeCloseTo(
      0.1 / Math.sqrt(3),
      12,
    )
  })

  it('nothing comes into the second tank, and both are seen from either pump', () => {
    const above = worked(both, weakSecond, 2)
    expect(above.arriving).toBeNull()
    expect(good(above.settlesAt).value).toBeCloseTo(0.8, 12)
    expect(good(above.other?.settlesAt ?? above.timeConstant)).toBeCloseTo(2, 12)
    expect(good(worked(both, inWash, 3).other?.settlesAt ?? above.timeConstant)).toBeCloseTo(0.8, 12)
  })

  it('the wash tank is tested only after both have settled: 100 racks', () => {
    expect(good(worked(both, inWash).racksBeforeTest)).toBe(100)
    expect(good(worked(both, inWash).timeConstants)).toEqual([20, expect.closeTo(40 / 3, 9)])
  })

  it('starts and stays at 2.0 g/L when charged and dosed right', () => {
    const { service } = worked(both, inWash, 3)
    expect(good(service).lowest).toBeCloseTo(2, 9)
    expect(good(service).highest).toBeCloseTo(2, 9)
    expect(good(service)).toMatchObject({ racksBelow: 0, racksAbove: 0 })
  })

  it('a wash tank that should hold less than comes over is told so, and its low edge needs no dose', () => {
    const faint: Pump = {
      ...inWash,
      window: { basis: 'g-per-L-tank', low: '0.4', target: '0.5', high: '0.6' },
    }
    const refused = { ok: false, problem: { code: 'cannot-compute', reason: 'more-arrives' } }
    expect(worked(both, faint).recharge).toMatchObject(refused)
    expect(requiredFlow(faint, context)).toMatchObject(refused)
    const edge: Pump = {
      ...inWash,
      window: { basis: 'g-per-L-tank', low: '0.7', target: '1.0', high: '1.3' },
    }
    expect(good(requiredFlow(edge, context)).low).toBe(0)
  })

  it('shows its working as sums anyone can redo', () => {
    const workings = explainTank({ machine: both, pump: inWash, product: soap, tested: tested(3) })
    for (const part of ['settlesAt', 'recharge', 'initialCharge'] as const) {
      const working = good(workings[part])
      expect(arithmetic(working.substituted) / working.result.value).toBeCloseTo(1, 4)
    }
    expect(Math.ceil(arithmetic(good(workings.racksBeforeTest).substituted) - 1e-3)).toBe(100)
    expect(good(workings.settlesAt).assumptions.join(' ')).toMatch(/second tank/u)
    const strength = good(explainStrength('g-per-L-tank', good(exactly(3, 'mL/rack')), context))
    expect(arithmetic(strength.substituted)).toBeCloseTo(2, 6)
    const byHand = explainTank({
      machine: conveyor([inSecond]),
      pump: inSecond,
      product: soap,
      tested: tested(),
    }).chargeByHand
    expect(arithmetic(good(byHand).substituted)).toBeCloseTo(100, 6)
  })
})

describe('a pump that feeds the wash tank alone', () => {
  const alone = worked(conveyor([inWash]), inWash)

  it('has clean water coming over, and is what it would be with a single tank', () => {
    const single = conveyor([inWash])
    const one = worked({ ...single, wash: { ...single.wash, upstream: null } as Machine['wash'] }, inWash)
    expect(good(alone.settlesAt)).toEqual(good(one.settlesAt))
    expect(good(alone.recharge)).toEqual(good(one.recharge))
    expect(good(alone.racksBeforeTest)).toBe(good(one.racksBeforeTest))
    expect(good(alone.service).points).toEqual(
      good(one.service).points.map((point) => ({
        ...point,
        strength: expect.closeTo(point.strength, 9),
        trough: expect.closeTo(point.trough, 9),
        low: expect.closeTo(point.low, 9),
        high: expect.closeTo(point.high, 9),
      })),
    )
    expect(alone.other).toMatchObject({
      which: 'upstream-tank',
      fedBy: null,
      window: null,
      chargeByHand: null,
    })
    expect(good(alone.other?.service ?? alone.service).highest).toBe(0)
  })

  it('another product in the second tank is none of its business', () => {
    const other = { ...weakSecond, productId: 'delimer' }
    expect(worked(conveyor([other, inWash]), inWash).arriving).toBeNull()
  })

  it('says which tank is not measured yet', () => {
    const unknown = conveyor([inSecond])
    const found = worked(
      { ...unknown, wash: { ...unknown.wash, upstream: { volume: null } } as Machine['wash'] },
      inSecond,
    )
    expect(found.racksBeforeTest).toMatchObject({ ok: false, problem: { field: 'wash.upstream.volume' } })
    expect(good(found.settlesAt).value).toBeCloseTo(2, 12)
  })
})

describe('what is bought', () => {
  it('counts the charge of the tank the pump feeds: 2.0 g/L x 40 L / 1.2 g/mL = 66.7 mL a fill', () => {
    const charge = good(initialCharge(inSecond, conveyor([inSecond]), soap, 120))
    expect(charge.perFill).toBeCloseTo(66.6667, 4)
    expect(charge.fillsPerOpenDay).toBe(2)
  })

  it('a probe in the wash tank adds only what does not come over: 3 mL a rack', () => {
    const probed: Pump = { ...inWash, control: 'probe' }
    const used = perRack(probed, conveyor([weakSecond, probed]), soap, null)
    expect(good(used.dose).value).toBeCloseTo(3, 9)
    const { service } = worked(conveyor([weakSecond, probed]), probed)
    expect(good(service).settlesAt).toBeCloseTo(2, 9)
  })
})

const grams = fc.double({ min: 0, max: 200, noNaN: true })
const pairOf = fc.record({ first: grams, second: grams })

describe('over a whole service of two tanks', () => {
  it('what was put in is what overflowed, was drained and is left, to 1e-9', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 300, noNaN: true }),
        fc.double({ min: 5, max: 300, noNaN: true }),
        fc.double({ min: 0.3, max: 12, noNaN: true }),
        fc.constantFrom('continuous' as const, 'mix-then-overflow' as const, 'displacement' as const),
        pairOf,
        pairOf,
        pairOf,
        fc.integer({ min: 1, max: 400 }),
        fc.integer({ min: 1, max: 5 }),
        (V1, V2, r, closure, dose, charge, besides, racks, fills) => {
          const {
            grams: total,
            first,
            second,
          } = good(
            cascadeOverService({
              tanks: { first: tank(V1, r, { closure }), second: tank(V2, r, { closure }) },
              own: { dose, charge },
              uncertainty: 0.05,
              besides: { dose: besides, charge },
              racks,
              fills,
              windows: { first: null, second: null },
            }),
          )
          const out = total.overflowed + total.drained + total.left
          expect(Math.abs(total.fed - out) / (total.fed + 1e-12)).toBeLessThan(1e-9)
          // what is left is what the last points of the courses say
          expect(first.last * V1 + second.last * V2).toBeCloseTo(total.left, 6)
        },
      ),
      { numRuns: 300 },
    )
  })

  it('answers any numbers at all with a result or a reason', () => {
    const tanks = { first: tank(60, 3), second: tank(40, 3) }
    fc.assert(
      fc.property(wild, wild, wild, wild, wild, (a, b, c, d, e) => {
        const result = cascadeOverService({
          tanks,
          own: { dose: { first: a, second: b }, charge: { first: c, second: d } },
          uncertainty: e,
          besides: { dose: { first: b, second: a }, charge: { first: d, second: c } },
          racks: Math.abs(a) < 500 ? a : b,
          fills: c,
          windows: { first: null, second: { low: d, high: e } },
        })
        expect(everyNumberFinite(result.ok ? result.value.grams : result.problem)).toBe(true)
      }),
      { numRuns: 500 },
    )
  })
})
