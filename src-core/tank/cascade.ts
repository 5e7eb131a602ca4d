import { all, fail, ok, within, type Outcome } from '../outcome'
import { timeConstant, WAIT_CONSTANTS } from './decay'
import { stepUnchecked } from './step'
import type { TankModel } from './types'

/** Strengths of two tanks, g/L: `first` is washed in first and fed by the overflow of `second`. */
export interface CascadeState {
  readonly first: number
  readonly second: number
}

export interface CascadeStep {
  readonly after: CascadeState
  /** g that left with the overflow of the first tank */
  readonly lost: number
}

/**
 * One rack through a conveyor whose second tank overflows into its first. Fresh rinse water enters the second; what
 * overflows there, with the product in it, enters the first together with the first tank's own dose. Doses in g per
 * rack. Both tanks pass on the same water. The strength of the overflow is taken as its mean over the rack, so the mass
 * balance of the pair is exact while the course within one rack is approximate.
 *
 * Problems: a number out of range; `outside-valid-range` when the tanks' waters differ.
 * Source: the one-tank step applied twice (derived, approximate).
 */
export function cascadeStep(
  tanks: TwoTanks,
  before: CascadeState,
  dose: { readonly first: number; readonly second: number },
): Outcome<CascadeStep> {
  const read = all([
    within(before.first, 0, 1e6, 'strength.first', 'g/L'),
    within(before.second, 0, 1e6, 'strength.second', 'g/L'),
    within(dose.first, 0, 1e9, 'dose.first', 'g'),
    within(dose.second, 0, 1e9, 'dose.second', 'g'),
  ])
  if (!read.ok) return read
  if (tanks.first.netWater !== tanks.second.netWater)
    return fail({ code: 'cannot-compute', reason: 'outside-valid-range' })
  return ok(cascadeUnchecked(tanks, before, dose))
}

export interface TwoTanks {
  readonly first: TankModel
  readonly second: TankModel
}

/** The same for numbers already checked; used where many racks are worked out in a row. */
export function cascadeUnchecked(
  tanks: TwoTanks,
  before: CascadeState,
  dose: { readonly first: number; readonly second: number },
): CascadeStep {
  const second = stepUnchecked(tanks.second, before.second, dose.second)
  // What comes over the weir is spread over the rack, whichever way the first tank's own dose is fed.
  const arriving = stepUnchecked({ ...tanks.first, feeding: 'with-rinse' }, before.first, second.lost)
  if (tanks.first.feeding === 'slug')
    return {
      after: { first: arriving.after + dose.first / tanks.first.volume, second: second.after },
      lost: arriving.lost,
    }
  const both = stepUnchecked(tanks.first, before.first, second.lost + dose.first)
  return { after: { first: both.after, second: second.after }, lost: both.lost }
}

/**
 * Mean strengths the pair settles at, g/L: m2/r in the second tank, (m1 + m2)/r in the first.
 * Problems: a number out of range.
 */
export function cascadeSettlesAt(
  tanks: TwoTanks,
  dose: { readonly first: number; readonly second: number },
): Outcome<CascadeState> {
  const read = all([
    within(dose.first, 0, 1e9, 'dose.first', 'g'),
    within(dose.second, 0, 1e9, 'dose.second', 'g'),
  ])
  if (!read.ok) return read
  const water = tanks.first.netWater
  return ok({ first: (dose.first + dose.second) / water, second: dose.second / water })
}

/**
 * Racks to wait before a cascade is tested: 3 times the sum of both time constants, at least one. Two equal tanks then
 * have taken up 98 % of a change.
 */
export const cascadeRacksBeforeTest = (tanks: TwoTanks): number =>
  Math.max(1, Math.ceil(WAIT_CONSTANTS * (timeConstant(tanks.first) + timeConstant(tanks.second)) - 1e-9))
