import { chain, ok, type Outcome } from '../outcome'
import type { Product, RinseWater } from '../records'
import { exactly } from '../statistics/make-estimate'
import { onBasis, type DoseContext } from './on-basis'
import { requiredDose } from './required-dose'

/** mg/L active that `dose` mL/rack gives, on the figures as they stand. Problems as `onBasis`. */
export const activeOf = (dose: number, context: DoseContext): Outcome<number> =>
  chain(exactly(dose, 'mL/rack'), (one) =>
    chain(onBasis('mg-per-L-active', one, context), (active) => ok(active.value)),
  )

/**
 * mg/L active that a product gives at `ppm` v/v, by its recorded strength: as the dose that brings so much into a litre.
 * Problems: `missing` product, strength or density; `outside-valid-range` below zero and from a million ppm up.
 */
export const activeOfPpm = (ppm: number, product: Product | null): Outcome<number> => {
  const context = { rinse: A_LITRE, product }
  return chain(requiredDose('ppm-vv', ppm, context), (dose) => activeOf(dose, context))
}

const A_LITRE: RinseWater = { kind: 'measured', perRack: { value: '1', unit: 'L' }, spread: null }
