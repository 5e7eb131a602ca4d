import { describe, expect, it } from 'vitest'
import { glassModel } from '#core/glass/model'
import { bound } from '#tests/bench/glass-simulation/bound'
import type { Habits } from '#tests/bench/glass-simulation/mistakes'
import type { Order } from '#tests/bench/glass-simulation/operator'
import { tally, type Tally } from '#tests/bench/glass-simulation/tally'
import { twoFaults } from '#tests/bench/glass-simulation/two-faults'
import { physicalWorld } from '#tests/bench/glass-simulation/worlds'

/**
 * A small run of `tests/bench/glass-simulation.ts`: physical kitchens that know nothing of the weights, all 13 causes
 * alike, one answer in ten wrong (each first page and each test is an answer). The long run stands beside each floor.
 */
const habits: Habits = { wrong: 0.1, wrongPer: 'answer', cannot: [], record: [] }
const run = (order: Order, seed: number, more: Partial<Habits> = {}): Tally =>
  tally({
    world: physicalWorld,
    habits: { ...habits, ...more },
    order,
    model: glassModel([]),
    kitchensPerCause: 20,
    seed,
    mostTests: 6,
  })

describe('an operator who answers truthfully, wrong one time in ten', { timeout: 120_000 }, () => {
  const ours = run('gain', 1)

  it('has the true cause first or second after five tests in more than five kitchens of six', () => {
    // Long run: 89 to 90 %, 91 % with causes as common as their priors. Without wrong answers it is 95 %.
    expect(ours.found[5]).toBeGreaterThan(5 / 6)
    expect(run('gain', 4, { wrong: 0 }).found[5]).toBeGreaterThan(0.9)
  })

  it('is ahead of every fixed and random order', () => {
    for (const order of ['easiest-first', 'bench', 'random'] as const) {
      const other = run(order, 2)
      expect(ours.found[5]).toBeGreaterThan((other.found[5] ?? 1) + 0.04)
      expect(ours.meanTests).toBeLessThan(other.meanTests)
    }
  })

  it('is behind someone who knows the kitchens to the last number, as it must be', () => {
    const best = bound(8, habits, 6, 150)
    expect(best.found[5]).toBeGreaterThan(ours.found[5] ?? 1)
    expect(best.found[5]).toBeGreaterThan(0.9)
  })

  it('needs fewer questions when a visit has measured the doses and the water', () => {
    const known = run('gain', 3, { record: ['measured', 'water-meters', 'gauges'] })
    expect(known.found[1]).toBeGreaterThan((ours.found[1] ?? 1) + 0.1)
    expect(known.found[5]).toBeGreaterThan(0.87)
  })

  it('is the same on every run of one seed', () => {
    expect(run('gain', 1)).toEqual(ours)
  })

  it('with two faults has one of them among the first two, and seldom names a second cause that is not there', () => {
    // Long run: 92 %; a second cause is falsely named in 17 % of kitchens with one.
    const two = twoFaults(2, habits, glassModel([]), 5)
    expect(two.oneInFirstTwo).toBeGreaterThan(0.9)
    expect(two.falselyNamed).toBeLessThan(0.3)
    expect(two.namedBeside).toBeGreaterThan(two.falselyNamed)
  })
})
