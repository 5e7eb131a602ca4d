import type { UnitName } from '../units/dimensions'

/** Stable: stands in Settings.codeLimits. Never reuse or rename one. */
export type CodeLimitId =
  | 'wash-temperature-stationary-single'
  | 'wash-temperature-stationary-dual'
  | 'wash-temperature-single-tank-conveyor'
  | 'wash-temperature-multi-tank-conveyor'
  | 'wash-temperature-chemical'
  | 'rinse-temperature-max'
  | 'rinse-temperature-stationary-single'
  | 'rinse-temperature-other'
  | 'rinse-pressure-min'
  | 'rinse-pressure-max'
  | 'supply-pressure-min'
  | 'supply-pressure-max'
  | 'ware-temperature-min'
  | 'drain-air-gap-min'
  | 'chlorine-low-step'
  | 'chlorine-low-temperature-pH-10'
  | 'chlorine-low-temperature-pH-8'
  | 'chlorine-middle-step'
  | 'chlorine-middle-temperature-pH-10'
  | 'chlorine-middle-temperature-pH-8'
  | 'chlorine-high-step'
  | 'chlorine-high-temperature-pH-10'
  | 'chlorine-high-temperature-pH-8'
  | 'chlorine-pH-max'
  | 'chlorine-pH-mild'
  | 'chlorine-max'
  | 'chlorine-contact'
  | 'chlorine-contact-short'
  | 'iodine-min'
  | 'iodine-max'
  | 'iodine-temperature'
  | 'iodine-pH-max'
  | 'quat-min'
  | 'quat-max'
  | 'quat-temperature'
  | 'quat-hardness-max'
  | 'other-contact'
  | 'hot-water-contact-manual'

/** One figure of a code in one unit, as its text prints it. */
export interface LimitFigure {
  readonly value: number
  readonly unit: UnitName
}

/**
 * One limit. A code prints it in two unit systems whose figures are rounded to each other; a reading is compared with
 * the figure of its own unit. `figures[0]` governs where a reading's unit is not printed.
 */
export interface Limit {
  readonly id: CodeLimitId | 'data-plate' | 'label'
  readonly what: string
  readonly bound: 'min' | 'max'
  readonly figures: readonly [LimitFigure, ...LimitFigure[]]
  readonly source: string
  /** how the figure was come by: seen in a state's adoption of the code, a secondary page, memory, trade practice */
  readonly how: 'adoption' | 'secondary' | 'memory' | 'common-practice' | 'settings' | 'record'
}

/** A limit of the shipped table, or what the settings put in its place. */
export interface CodeLimit extends Limit {
  readonly id: CodeLimitId
}

export type CodeLimits = { readonly [I in CodeLimitId]: CodeLimit }

/** How a reading stands to a figure; the figure itself meets it. */
export type Standing = 'meets' | 'misses'

/** One comparison, as advice: the figure, where it comes from, and how the reading stands to it. Never a verdict. */
export interface LimitAdvice {
  readonly limit: Limit
  readonly figure: LimitFigure
  /** the reading in the unit of the figure */
  readonly reading: number
  readonly standing: Standing
  /** the figure lies within what the reading may be off: a finer instrument could say otherwise */
  readonly close: boolean
}
