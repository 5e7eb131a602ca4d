import { describe, expect, it } from 'vitest'
import { monthLitres, type LitresInput } from '#core/spend/month-litres'
import type { Charge } from '#core/spend/charges'
import type { RackRate } from '#core/spend/types'
import { estimate } from '#core/statistics/make-estimate'
import { good } from './build'

/** 100 racks on each of 30 days, known to 5 % (standard). */
const racks: RackRate = {
  from: 'stated',
  perOpenDay: 100,
  relativeStandard: 0.05,
  stated: 100,
  counted: null,
  gap: null,
}
const days = { days: 30, openDays: 30, rackDays: 30 }
/** 5 mL a rack: flow 1 %, seconds 2 %. */
const dose = good(
  estimate(5, 'mL/rack', [
    { source: 'replicates', standard: 0.05 },
    { source: 'dose-seconds', standard: 0.1 },
  ]),
)
const charge: Charge = { perFill: 50, fillsPerOpenDay: 2, followsFlow: false, known: true }
const input: LitresInput = { racks, dose, charge, prime: null, container: 10 }
const standard = (over: Partial<LitresInput>): number =>
  good(monthLitres({ ...input, ...over }, days)).estimate.standard

/**
 * Worked by hand: racks take 15 L and fills 3 L. Source of the sums: JCGM 100:2008 (GUM) 5.1.2. That fills are known to
 * 10 % and priming to 25 % is our judgement; that they count at all is not.
 */
describe('the interval of a month’s litres', () => {
  it('takes in flow, seconds, racks and the number of fills: 15 L at 1, 2 and 5 %, 3 L at 10 %', () => {
    expect(standard({})).toBeCloseTo(Math.hypot(0.15, 0.3, 0.75, 0.3), 9)
  })

  it('lets the flow move timed fills too, and seconds per rack and racks the racks’ part only', () => {
    expect(standard({ charge: { ...charge, followsFlow: true } })).toBeCloseTo(
      Math.hypot(0.18, 0.3, 0.75, 0.3),
      9,
    )
  })

  it('takes in what priming loses: 200 mL of each 10 L, known to a quarter', () => {
    // everything is 1 / 0.98 as much, and 18 x 0.02 / 0.98 = 0.36735 L of it is priming
    const primed = Math.hypot(0.15, 0.3, 0.75, 0.3) / 0.98
    expect(standard({ prime: 200 })).toBeCloseTo(Math.hypot(primed, 0.25 * 0.3673469), 7)
  })

  it('does not let the rinse water of a probe’s dose move the fills', () => {
    const held = good(estimate(5, 'mL/rack', [{ source: 'rinse-volume', standard: 0.1 }]))
    const timed = { ...charge, followsFlow: true }
    expect(standard({ dose: held, charge: timed })).toBeCloseTo(Math.hypot(0.3, 0.75, 0.3), 9)
  })

  it('is nothing where nothing is used', () => {
    const idle = { ...racks, perOpenDay: 0 }
    expect(
      good(monthLitres({ ...input, racks: idle, charge: { ...charge, fillsPerOpenDay: 0 } }, days)).estimate
        .standard,
    ).toBe(0)
  })
})
