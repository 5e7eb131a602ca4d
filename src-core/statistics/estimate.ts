import type { UnitName } from '../units/dimensions'

/** Where a part of an uncertainty comes from. */
export type BudgetSource =
  | 'replicates'
  | 'run-repeatability'
  | 'reading'
  | 'roller-pulse'
  | 'timer'
  | 'cylinder-tolerance'
  | 'tube-factor'
  | 'density'
  | 'scale'
  | 'flow'
  | 'dose-seconds'
  | 'rinse-volume'
  | 'strength'
  | 'racks'
  | 'charges'
  | 'priming'
  | 'price'
  | 'tank-volume'
  | 'kit-factor'
  | 'step-width'
  | 'count'
  | 'tank-above'

/** One line of an uncertainty budget (GUM): standard uncertainty in the unit of the result. */
export interface BudgetLine {
  readonly source: BudgetSource
  readonly standard: number
  /** null: infinitely many, as for a Type B line */
  readonly degreesOfFreedom: number | null
  /**
   * -1 when the result falls as this source rises. Lets a source that two quantities share cancel where it truly
   * does, as the density of a weighed run does in mg/L; absent means +1.
   */
  readonly sign?: -1
  /** part of the combined variance, 0 to 1 */
  readonly share: number
}

/** The units a result can have: those of entries, and some that only results have. */
export type ResultUnit = UnitName | 'turns' | 'g/rack' | 'L/month' | 'money/month'

/**
 * A result and how well it is known: value +- expanded at 95 %. Plain data, so that it travels and prints.
 * `predicted`: no scatter was observed, the budget is a forecast from the instruments alone.
 */
export interface Estimate<U extends ResultUnit = UnitName> {
  readonly unit: U
  readonly value: number
  readonly standard: number
  readonly coverage: number
  readonly expanded: number
  readonly low: number
  readonly high: number
  readonly degreesOfFreedom: number | null
  readonly predicted: boolean
  readonly budget: readonly BudgetLine[]
}
