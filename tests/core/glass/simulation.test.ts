import { describe, expect, it } from 'vitest'
import { glassModel } from '#core/glass/model'
import type { Habits, Order } from '#tests/bench/glass-simulation/operator'
import { tally, type Tally } from '#tests/bench/glass-simulation/tally'
import { physicalWorld } from '#tests/bench/glass-simulation/worlds'

/**
 * A small run of `tests/bench/glass-simulation.ts`: physical kitchens that know nothing of the weights, all 13 causes
 * alike, one answer in ten wrong. The long run (400 kitchens for each cause) is quoted beside each floor.
 */
const habits: Habits = { wrong: 0.1, wrongPer: 'answer', cannot: [], record: [] }
const run = (order: Order, seed: number, more: Partial<Habits> = {}): Tally =>
  tally({
    world: physicalWorld,
    habits: { ...habits, ...more },
    order,
    model: glassModel([]),
    kitchensPerCause: 25,
    seed,
    mostTests: 7,
  })

describe('an operator who answers truthfully, wrong one time in ten', { timeout: 60_000 }, () => {
  const ours = run('gain', 1)

  it('has the true cause first or second after five tests in more than four kitchens of five', () => {
    // Long run: 85 %. The goal of 90 % is missed: with every test asked it is 88 %, because one answer in ten is wrong;
    // without wrong answers it is 91 %, and 90 % where a visit has measured the doses and the water.
    expect(ours.found[5]).toBeGreaterThan(0.8)
  })

  it('is ahead of every fixed and random order, test for test', () => {
    for (const order of ['easiest-first', 'bench', 'random'] as const) {
      const other = run(order, 2)
      expect(ours.found[5]).toBeGreaterThan((other.found[5] ?? 1) + 0.06)
      expect(ours.meanTests).toBeLessThan(other.meanTests)
    }
  })

  it('needs fewer questions when a visit has measured the doses and the water', () => {
    const known = run('gain', 3, { record: ['measured', 'water-meters', 'gauges'] })
    expect(known.found[1]).toBeGreaterThan((ours.found[1] ?? 1) + 0.1)
  })

  it('is the same on every run of one seed', () => {
    expect(run('gain', 1)).toEqual(ours)
  })
})
