import { describe, expect, it } from 'vitest'
import { boosterRacks, boosterStrength } from '#core/tank/booster'
import { cascadeRacksBeforeTest, cascadeSettlesAt, cascadeStep } from '#core/tank/cascade'
import { rackStep } from '#core/tank/step'
import reference from '../../references/tank.json'
import { good, tank } from './support'

const moved = (base: readonly number[], k: readonly number[], by: number): readonly number[] =>
  base.map((value, i) => value + by * (k[i] ?? 0))

/**
 * The differential equation itself, V dc/dN = dose(N) - r c, by the classical fourth-order Runge-Kutta method
 * (Abramowitz and Stegun 25.5.10): an algorithm that shares nothing with the closed form under test.
 */
function integrate(
  rates: (state: readonly number[]) => readonly number[],
  start: readonly number[],
  racks: number,
) {
  const steps = racks * 2000
  const h = racks / steps
  let y = start
  for (let n = 0; n < steps; n += 1) {
    const k1 = rates(y)
    const k2 = rates(moved(y, k1, h / 2))
    const k3 = rates(moved(y, k2, h / 2))
    const k4 = rates(moved(y, k3, h))
    y = y.map(
      (value, i) => value + (h / 6) * ((k1[i] ?? 0) + 2 * (k2[i] ?? 0) + 2 * (k3[i] ?? 0) + (k4[i] ?? 0)),
    )
  }
  return y
}

describe('the continuous tank against numerical integration', () => {
  it.each([
    [40, 3, 4.8, 2],
    [15, 3.785, 4.8, 0],
    [110, 2.044, 4.68, 5],
    [2, 7, 3, 1],
  ])('a %d L tank with %d L and %d g per rack, from %d g/L', (V, r, m, start) => {
    const [expected = NaN] = integrate(([c = 0]) => [(m - r * c) / V], [start], 12)
    let c = start
    for (let rack = 0; rack < 12; rack += 1) c = good(rackStep(tank(V, r), c, m)).after
    expect(c).toBeCloseTo(expected, 9)
  })
})

describe('two tanks in cascade', () => {
  const first = tank(70, 2.5)
  const second = tank(35, 2.5)
  const tanks = { first, second }

  it('settle at m2/r and (m1 + m2)/r', () => {
    expect(good(cascadeSettlesAt(tanks, { first: 4, second: 1 }))).toEqual({ first: 2, second: 0.4 })
    let state = { first: 0, second: 3 }
    for (let rack = 0; rack < 600; rack += 1)
      state = good(cascadeStep(tanks, state, { first: 4, second: 1 })).after
    expect(state.first).toBeCloseTo(2, 6)
    expect(state.second).toBeCloseTo(0.4, 6)
  })

  it('follow the pair of differential equations to within 0.5 % while they change', () => {
    const [c1 = NaN, c2 = NaN] = integrate(
      ([x = 0, y = 0]) => [(4 + 2.5 * y - 2.5 * x) / 70, (1 - 2.5 * y) / 35],
      [0, 3],
      20,
    )
    let state = { first: 0, second: 3 }
    for (let rack = 0; rack < 20; rack += 1)
      state = good(cascadeStep(tanks, state, { first: 4, second: 1 })).after
    expect(state.second).toBeCloseTo(c2, 9)
    expect(Math.abs(state.first / c1 - 1)).toBeLessThan(0.005)
  })

  it('are tested only after the slow tank and the quick one have both settled', () => {
    const wait = cascadeRacksBeforeTest(tanks)
    let state = { first: 0, second: 0 }
    for (let rack = 0; rack < wait; rack += 1)
      state = good(cascadeStep(tanks, state, { first: 4, second: 1 })).after
    expect(state.first).toBeGreaterThan(0.95 * 2)
  })
})

describe('a booster that mixes', () => {
  const { booster } = reference
  const input = {
    volume: booster.volume_L,
    rinse: booster.rinse_L,
    before: booster.before_ppm,
    after: booster.after_ppm,
  }

  it.each(Object.entries(booster.rows))('lags: after %s racks the rinse is at %d ppm', (racks, ppm) => {
    const found = good(boosterStrength({ ...input, racks: Number(racks) }))
    expect(Math.abs(found - ppm)).toBeLessThanOrEqual(booster.tolerance)
  })

  it('asks for three booster volumes of water before glasses are judged', () => {
    expect(good(boosterRacks(6, 3))).toBe(6)
    expect(good(boosterRacks(0, 3))).toBe(1)
    expect(boosterRacks(6, 0)).toMatchObject({ ok: false, problem: { field: 'machine.rinse' } })
  })
})
