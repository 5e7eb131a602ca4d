import type { VerificationMethod } from '../records'
import type { UnitName } from '../units/dimensions'
import type { VerifiedUnit } from './types'

/** How one kind of check is read and what it comes out in. */
export interface MethodRule {
  readonly result: VerifiedUnit
  /** unit of the typed reading; null for a count of drops */
  readonly reads: UnitName
  /**
   * how the reading becomes the result: as it stands; times what one unit stands for; less the plain water, over
   * what one g/L adds
   */
  readonly by: 'itself' | 'factor' | 'slope'
  /** half-width of the reading in steps: half a pad or graduation; a whole drop */
  readonly steps: number
  /** step where none is stated; null: it must be stated */
  readonly usualStep: number | null
  /** half-width of what the kit's leaflet says, as a share, where the instrument states none. Judgement. */
  readonly kitShare: number
}

const DROPS = { by: 'factor', reads: 'drops', steps: 1, usualStep: 1, kitShare: 0.05 } as const
const VOLUME = { by: 'factor', reads: 'mL', steps: 0.5, usualStep: null, kitShare: 0.02 } as const

/**
 * A strip is read to the nearer pad, so the truth lies within half a step. The colour of a drop test turns somewhere in
 * the last drop, and drops differ: a whole drop either way. Detergent is titrated as g of product per litre: the
 * leaflet's factor says how many one mL or drop stands for.
 */
export const METHOD_RULES: { readonly [M in VerificationMethod]: MethodRule } = {
  strip: {
    result: 'mg/L-active',
    reads: 'mg/L-active',
    by: 'itself',
    steps: 0.5,
    usualStep: null,
    kitShare: 0,
  },
  'chlorine-titration': { result: 'mg/L-active', ...VOLUME },
  'chlorine-drops': { result: 'mg/L-active', ...DROPS },
  'alkalinity-titration': { result: 'g/L-product', ...VOLUME },
  'alkalinity-drops': { result: 'g/L-product', ...DROPS },
  'hardness-titration': { result: 'mg/L-CaCO3', ...VOLUME },
  'hardness-drops': { result: 'mg/L-CaCO3', ...DROPS },
  conductivity: {
    result: 'g/L-product',
    reads: 'uS/cm',
    by: 'slope',
    steps: 0.5,
    usualStep: 0,
    kitShare: 0.05,
  },
}
