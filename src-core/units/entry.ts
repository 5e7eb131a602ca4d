import type { Dimension, UnitName, UnitOf } from './dimensions'

/**
 * What a person typed: the number in canonical decimal form (point as decimal sign, no grouping, trailing zeros kept,
 * because they say how closely it was read) and its unit. Display settings never change a saved entry.
 */
export interface Entry<U extends UnitName = UnitName> {
  readonly value: string
  readonly unit: U
}

export type EntryOf<D extends Dimension> = Entry<UnitOf<D>>

/** A plain number without a unit, in the same canonical decimal form. */
export type NumberText = string

/** An entry from a value and a unit, for code that makes records. */
export const entry = <U extends UnitName>(value: string, unit: U): Entry<U> => ({ value, unit })
