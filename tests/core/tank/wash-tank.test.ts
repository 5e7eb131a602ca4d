import { describe, expect, it } from 'vitest'
import { initialChargeGrams, rechargeGrams, secondsFor, volumesForTarget } from '#core/tank/charge'
import { keptAfter, keptPerRack, racksBeforeTest, racksUntil, timeConstant } from '#core/tank/decay'
import { tankModel } from '#core/tank/model'
import { rackStep, settled, settlesAt } from '#core/tank/step'
import type { Closure } from '#core/tank/types'
import reference from '../../references/tank.json'
import { dump, good, tank } from './support'

const { main, A_setting: a, B_short_recharge: b, C_no_recharge: c, D_slug: d, E_carry_out: e } = reference
const model = tank(main.volume_L, main.rinse_L)

const after = (racks: number, start: number, dose: number): number => {
  let strength = start
  for (let rack = 0; rack < racks; rack += 1) strength = good(rackStep(model, strength, dose)).after
  return strength
}

// Every number of this file: tests/references/tank.json, mass balance worked by hand.
describe('setting times of a wash tank', () => {
  it('charges a fresh 40 L tank to 2 g/L with 80 g, 66.67 mL, 33.33 s', () => {
    const grams = good(initialChargeGrams(model, main.target_g_per_L))
    expect(grams).toBe(a.initial_g)
    expect(grams / main.density_g_per_mL).toBeCloseTo(a.initial_mL, 12)
    expect(good(secondsFor(grams, main.density_g_per_mL, main.flow_mL_per_min))).toBeCloseTo(a.initial_s, 12)
  })

  it('holds it with 6 g, 5 mL, 2.5 s per rack', () => {
    const grams = good(rechargeGrams(model, main.target_g_per_L))
    expect(grams).toBe(a.recharge_g)
    expect(grams / main.density_g_per_mL).toBeCloseTo(a.recharge_mL, 12)
    expect(good(secondsFor(grams, main.density_g_per_mL, main.flow_mL_per_min))).toBeCloseTo(a.recharge_s, 12)
  })

  it('takes 13.33 racks for 1/e and 39.94 racks for 95 % of a change, so a test waits 40', () => {
    expect(keptPerRack(model)).toBeCloseTo(a.kept_per_rack, 14)
    expect(timeConstant(model)).toBeCloseTo(a.time_constant_racks, 12)
    expect(racksUntil(model, 0.95)).toBeCloseTo(a.racks_for_95_percent, 10)
    expect(racksBeforeTest(model)).toBe(40)
  })

  it('takes what is still in the tank off the charge, and never asks for less than nothing', () => {
    expect(good(initialChargeGrams(model, 2, 1.5, 10))).toBe(65)
    expect(good(initialChargeGrams(model, 2, 9, 40))).toBe(0)
  })

  it('meets a target by volume: 0.3 % in 40 L is 120 mL', () => {
    const { percent, volume_L, millilitres } = reference.by_volume
    const found = good(volumesForTarget(tank(volume_L, 3), percent * 10_000))
    expect(found.initialMillilitres).toBeCloseTo(millilitres, 12)
    expect(found.rechargeMillilitres).toBeCloseTo(9, 12)
  })

  it.each(reference.sites)('agrees with the worked site $id', (row) => {
    const site = tank(row.V, row.r)
    const dose = ((row.q * row.s) / 60) * row.rho
    expect(settlesAt(site, dose)).toBeCloseTo(row.settles_at, 12)
    expect(timeConstant(site)).toBeCloseTo(row.tau, 12)
    const charge = good(initialChargeGrams(site, row.target))
    expect(charge).toBeCloseTo(row.charge_g, 12)
    expect(good(secondsFor(charge, row.rho, row.q))).toBeCloseTo(row.charge_s, 12)
    expect(good(secondsFor(good(rechargeGrams(site, row.target)), row.rho, row.q))).toBeCloseTo(
      row.recharge_s,
      12,
    )
  })
})

describe('strength rack by rack', () => {
  it('sags from 2.0 to 1.6 g/L when the recharge is half a second short', () => {
    expect(settlesAt(model, b.grams)).toBeCloseTo(b.settles_at, 14)
    for (const [racks, strength] of Object.entries(b.from_2))
      expect(after(Number(racks), 2, b.grams)).toBeCloseTo(strength, 12)
  })

  it('halves in 9.242 racks without recharge', () => {
    expect(after(10, 2, 0)).toBeCloseTo(c.after_10, 3)
    expect(after(20, 2, 0)).toBeCloseTo(c.after_20, 3)
    expect(Math.abs(racksUntil(model, 0.5) - c.half_in_racks)).toBeLessThan(c.tolerance)
    expect(keptAfter(model, racksUntil(model, 0.5))).toBeCloseTo(0.5, 14)
  })

  it('swings between 2.076 and 1.926 about a mean of 2.000 when the dose comes as a slug', () => {
    const slug = tank(main.volume_L, main.rinse_L, { feeding: 'slug' })
    const found = good(settled(slug, d.grams))
    expect(found.peak).toBeCloseTo(d.peak, 12)
    expect(found.trough).toBeCloseTo(d.trough, 12)
    expect(found.mean).toBe(d.mean)
    const grams = good(rechargeGrams(slug, 2, 'peak'))
    expect(Math.abs(grams - d.grams_for_peak_at_target)).toBeLessThan(d.tolerance)
    expect(Math.abs(good(secondsFor(grams, 1.2, 120)) - d.seconds)).toBeLessThan(d.tolerance)
    expect(good(rechargeGrams(slug, 2))).toBe(6)
  })

  it('settles 5 % higher when 0.15 L a rack leave on ware and as vapour', () => {
    const wet = tank(main.volume_L, main.rinse_L, { carriedOut: e.carried_out_L })
    expect(Math.abs(settlesAt(wet, e.grams) - e.settles_at)).toBeLessThan(e.tolerance)
  })

  it.each(['continuous', 'mix-then-overflow', 'displacement'] as const)(
    'keeps the printed share in the %s closure',
    (closure) => {
      const { tolerance } = reference.closures_at_0_075
      const kept = keptPerRack(tank(40, 3, { closure: closure satisfies Closure }))
      expect(Math.abs(kept - reference.closures_at_0_075[closure])).toBeLessThan(tolerance)
    },
  )
})

describe('dump-and-refill machines', () => {
  it.each(reference.dump_sites)('agrees with the worked site $id', (row) => {
    const site = dump(row.heel, row.r)
    const dose = ((row.q * row.s) / 60) * row.rho
    expect(settlesAt(site, dose)).toBeCloseTo(row.settles_at, 12)
    expect(keptPerRack(site)).toBeCloseTo(row.kept, 14)
  })

  it('stand at m/V at once when nothing stays in the sump', () => {
    expect(good(rackStep(dump(0, 5), 0.7, 10)).after).toBe(2)
    expect(racksBeforeTest(dump(0, 5))).toBe(1)
  })
})

describe('edges of the wash tank', () => {
  it('treats more rinse than tank as a tank replaced each rack, in the displacement closure', () => {
    const small = tank(2, 5, { closure: 'displacement' })
    expect(keptPerRack(small)).toBe(0)
    expect(good(rackStep(small, 9, 10)).after).toBe(2)
    expect(racksBeforeTest(small)).toBe(1)
  })

  it('says so when as much water is carried out as comes in', () => {
    expect(
      tankModel({ volume: 40, rinse: 3, carriedOut: 3, closure: 'continuous', feeding: 'slug' }),
    ).toMatchObject({ ok: false, problem: { reason: 'no-overflow' } })
  })

  it.each([
    ['no volume', { volume: 0 }, 'wash.volume'],
    ['a negative volume', { volume: -40 }, 'wash.volume'],
    ['no rinse water', { rinse: 0 }, 'rinse'],
    ['a negative carry-out', { carriedOut: -0.1 }, 'wash.carriedOut'],
  ])('names the field for %s', (_, change, field) => {
    const found = tankModel({
      volume: 40,
      rinse: 3,
      carriedOut: 0,
      closure: 'continuous',
      feeding: 'slug',
      ...change,
    })
    expect(found).toMatchObject({ ok: false, problem: { code: 'number-out-of-range', field } })
  })

  it('gives no seconds for a pump that delivers nothing', () => {
    expect(secondsFor(6, 1.2, 0)).toMatchObject({ ok: false, problem: { field: 'flow' } })
  })
})
