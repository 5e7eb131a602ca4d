import { fail, ok, type Outcome } from '../outcome'
import type { Test } from '../records'
import type { Estimate } from '../statistics/estimate'
import { instrumentLimits, type InstrumentLimits } from './instrument-limits'
import { productDensity } from './product-density'
import { NO_TUBE, tubeFactor, type TubeFactor } from './tube-factor'
import type { TestConditions } from './types'

/** What of a test decides how its readings are corrected. */
export type HowTested = Pick<Test, 'method' | 'tubeImmersed'>

/** What turns a raw reading into true volume. */
export interface Correction {
  readonly tube: TubeFactor
  /** for weighed runs */
  readonly density: Estimate<'g/mL'> | null
  /** true mL per mL read, or per g weighed */
  readonly factor: number
}

/**
 * The correction of one test: the density for weighed runs, the tube factor for a draw-down with the pick-up tube
 * standing in the cylinder, else none.
 *
 * Problems: `missing` product, density, instrument, bore or tube diameter; those of the entries read.
 */
export function correctionFor(test: HowTested, conditions: TestConditions): Outcome<Correction> {
  if (test.method === 'weighed') {
    const density = productDensity(conditions.product)
    return density.ok
      ? ok({ tube: NO_TUBE, density: density.value, factor: 1 / density.value.value })
      : density
  }
  if (test.method === 'catch' || !test.tubeImmersed) return ok({ tube: NO_TUBE, density: null, factor: 1 })
  if (conditions.instrument === null)
    return fail({ code: 'missing', field: 'test.instrumentId', needed: 'instrument' })
  const tube = tubeFactor(conditions.tube.outsideDiameter, conditions.instrument.bore)
  return tube.ok ? ok({ tube: tube.value, density: null, factor: tube.value.factor }) : tube
}

/**
 * The limits of the instrument of a test. A scale is wanted for weighed runs and only for them; another kind is
 * `missing` instrument.
 */
export function limitsFor(test: HowTested, conditions: TestConditions): Outcome<InstrumentLimits> {
  const limits = instrumentLimits(conditions.instrument)
  if (!limits.ok) return limits
  return (test.method === 'weighed') === (limits.value.measures === 'mass')
    ? limits
    : fail({ code: 'missing', field: 'test.instrumentId', needed: 'instrument' })
}
