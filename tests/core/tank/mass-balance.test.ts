import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { initialChargeGrams, rechargeGrams, secondsFor, volumesForTarget } from '#core/tank/charge'
import { cascadeSettlesAt, cascadeStep } from '#core/tank/cascade'
import { keptAfter, keptPerRack, racksBeforeTest, racksUntil, timeConstant } from '#core/tank/decay'
import { dumpModel, tankModel, volumeOf } from '#core/tank/model'
import { rackStep, settled, settlesAt } from '#core/tank/step'
import { anyModel, anyTank, everyNumberFinite, good, tank, wild } from './support'

const doses = fc.array(fc.double({ min: 0, max: 200, noNaN: true }), { minLength: 1, maxLength: 200 })
const strength = fc.double({ min: 0, max: 50, noNaN: true })

describe('product is neither made nor lost', () => {
  it('balances to 1e-9 over any run of racks, in every closure, feeding and machine', () => {
    fc.assert(
      fc.property(anyModel, strength, doses, (model, start, fed) => {
        let c = start
        let lost = 0
        for (const dose of fed) {
          const step = good(rackStep(model, c, dose))
          c = step.after
          lost += step.lost
        }
        const put = fed.reduce((sum, dose) => sum + dose, 0)
        const throughput = put + volumeOf(model) * start + lost + 1e-12
        expect(Math.abs(volumeOf(model) * (c - start) - (put - lost)) / throughput).toBeLessThan(1e-9)
      }),
      { numRuns: 500 },
    )
  })

  it('balances to 1e-9 through two tanks in cascade', () => {
    fc.assert(
      fc.property(
        anyTank,
        fc.double({ min: 5, max: 300, noNaN: true }),
        doses,
        strength,
        (first, V, fed, start) => {
          const second = tank(V, first.netWater, { closure: first.closure, feeding: first.feeding })
          const tanks = { first, second }
          let state = { first: start, second: start / 2 }
          let lost = 0
          for (const dose of fed) {
            const step = good(cascadeStep(tanks, state, { first: dose, second: dose / 3 }))
            state = step.after
            lost += step.lost
          }
          const put = fed.reduce((sum, dose) => sum + (dose * 4) / 3, 0)
          const before = first.volume * start + (second.volume * start) / 2
          const now = first.volume * state.first + second.volume * state.second
          expect(Math.abs(now - before - (put - lost)) / (put + before + lost + 1e-12)).toBeLessThan(1e-9)
        },
      ),
      { numRuns: 300 },
    )
  })
})

describe('whatever the numbers', () => {
  it('a tank heads for dose over water from either side and never past it, fed with the rinse', () => {
    fc.assert(
      fc.property(anyTank, strength, fc.double({ min: 0, max: 100, noNaN: true }), (model, start, dose) => {
        const smooth = tank(model.volume, model.netWater, { closure: model.closure })
        const end = settlesAt(smooth, dose)
        const next = good(rackStep(smooth, start, dose)).after
        const slack = 1e-9 * (1 + end + start)
        expect(next).toBeGreaterThanOrEqual(Math.min(start, end) - slack)
        expect(next).toBeLessThanOrEqual(Math.max(start, end) + slack)
      }),
    )
  })

  it('the settled peak and trough reproduce themselves in one more rack', () => {
    fc.assert(
      fc.property(anyModel, fc.double({ min: 0, max: 100, noNaN: true }), (model, dose) => {
        const { peak, trough, mean } = good(settled(model, dose))
        const step = good(rackStep(model, peak, dose))
        expect(step.after).toBeCloseTo(peak, 8)
        if (model.kind === 'tank' && model.feeding === 'slug') {
          expect(step.trough).toBeCloseTo(trough, 8)
          expect(trough).toBeLessThanOrEqual(mean * (1 + 1e-9) + 1e-300)
          expect(peak).toBeGreaterThanOrEqual(mean * (1 - 1e-9) - 1e-300)
        }
      }),
    )
  })

  it('after the racks it asks one to wait, at least 95 % of a change is in', () => {
    fc.assert(
      fc.property(anyModel, (model) => {
        expect(keptAfter(model, racksBeforeTest(model))).toBeLessThanOrEqual(0.05)
      }),
    )
  })

  it('nothing throws and nothing is infinite or not a number, for any number at all', () => {
    fc.assert(
      fc.property(anyModel, wild, wild, wild, wild, (model, a, b, c, d) => {
        const smooth = tank(10, 1)
        const results: readonly unknown[] = [
          tankModel({ volume: a, rinse: b, carriedOut: c, closure: 'displacement', feeding: 'slug' }),
          dumpModel(a, b),
          rackStep(model, a, b),
          settled(model, a),
          initialChargeGrams(model, a, b, c),
          rechargeGrams(model, a, 'peak'),
          volumesForTarget(model, a),
          secondsFor(a, b, c),
          cascadeStep({ first: smooth, second: smooth }, { first: a, second: b }, { first: c, second: d }),
          cascadeSettlesAt({ first: smooth, second: smooth }, { first: a, second: b }),
          keptPerRack(model),
          keptAfter(model, a),
          timeConstant(model),
          racksBeforeTest(model),
          racksUntil(model, a),
        ]
        for (const result of results) expect(everyNumberFinite(result)).toBe(true)
      }),
      { numRuns: 1000 },
    )
  })
})
