import { fail, ok, type Outcome } from '../outcome'
import type { EntryOf } from '../units/entry'
import { unitsOf } from '../units/dimensions'
import { inUnit } from '../units/quantity'
import { read } from '../units/read'
import type { UnitOf } from '../units/dimensions'

export type HardnessClass = 'soft' | 'moderately-hard' | 'hard' | 'very-hard'

/** Upper ends of the classes, mg/L as CaCO3. Source: U.S. Geological Survey, FAQ on water hardness. */
export const HARDNESS_CLASS_ENDS = { soft: 60, 'moderately-hard': 120, hard: 180 } as const

/**
 * The class of a hardness in mg/L as CaCO3. The survey prints whole numbers and leaves gaps (0 to 60, 61 to 120, 121 to
 * 180, over 180); our rule puts everything up to and including an end into the class below: 60 is soft, 60.1 is
 * moderately hard. Below zero, or no number, counts as soft.
 */
export function hardnessClass(mgPerLitre: number): HardnessClass {
  if (!(mgPerLitre > HARDNESS_CLASS_ENDS.soft)) return 'soft'
  if (mgPerLitre <= HARDNESS_CLASS_ENDS['moderately-hard']) return 'moderately-hard'
  return mgPerLitre <= HARDNESS_CLASS_ENDS.hard ? 'hard' : 'very-hard'
}

export interface HardnessReading {
  /** mg/L as CaCO3 */
  readonly mgPerLitre: number
  readonly class: HardnessClass
  /** the same in every degree people use */
  readonly degrees: readonly { readonly unit: UnitOf<'hardness'>; readonly value: number }[]
}

/** More than this is brine or a slip of the pen, mg/L as CaCO3. */
const MOST = 10_000

/** A hardness entry in all common degrees, and its class. Problems: missing, unreadable or out of 0 to 10 000 mg/L. */
export function hardness(entry: EntryOf<'hardness'> | null, field: string): Outcome<HardnessReading> {
  if (entry === null) return fail({ code: 'missing', field, needed: 'water' })
  const typed = read(entry, field, { low: 0, high: MOST })
  if (!typed.ok) return typed
  const mgPerLitre = inUnit(typed.value, 'mg/L-CaCO3')
  return ok({
    mgPerLitre,
    class: hardnessClass(mgPerLitre),
    degrees: unitsOf('hardness').map((unit) => ({ unit, value: inUnit(typed.value, unit) })),
  })
}

/**
 * Hardness from the ions, mg/L as CaCO3: 2.497 Ca + 4.118 Mg, both mg/L.
 * Source: Standard Methods 2340 B (the second factor from memory). Problems: a number out of 0 to 10 000.
 */
export function hardnessFromIons(calcium: number, magnesium: number): Outcome<number> {
  const inside = (value: number): boolean => value >= 0 && value <= MOST
  return inside(calcium) && inside(magnesium)
    ? ok(2.497 * calcium + 4.118 * magnesium)
    : fail({ code: 'number-out-of-range', field: 'water.calcium', low: 0, high: MOST, unit: 'mg/L' })
}
