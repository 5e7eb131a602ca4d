/** How fresh rinse water leaves the tank again: while mixing, after mixing, or pushing old water out first. */
export type Closure = 'continuous' | 'mix-then-overflow' | 'displacement'

/** Whether the dose comes spread over the rinse, or all at once after it. */
export type Feeding = 'with-rinse' | 'slug'

declare const checked: unique symbol

/**
 * A recirculating tank of constant volume with an overflow. Litres; `netWater` is what overflows per rack. Made only by
 * `tankModel`, which has checked the numbers, so that everything done with a model is finite.
 */
export interface TankModel {
  readonly [checked]: true
  readonly kind: 'tank'
  readonly volume: number
  readonly netWater: number
  readonly closure: Closure
  readonly feeding: Feeding
}

/** A machine that drops its water every cycle: `heel` litres stay, `fill` litres are new. Made only by `dumpModel`. */
export interface DumpModel {
  readonly [checked]: true
  readonly kind: 'dump-and-refill'
  readonly heel: number
  readonly fill: number
}

export type WashModel = TankModel | DumpModel

/** One rack: strength after it, the lowest it stood at, and what left the tank. g/L, g/L, g. */
export interface RackStep {
  readonly after: number
  readonly trough: number
  readonly lost: number
}

/** What stands out about a setting. The screen makes the sentence. */
export type SettingNote =
  | { readonly code: 'no-initial-charge-needed' }
  | { readonly code: 'no-initial-charge-on-this-machine' }
  | { readonly code: 'tank-replaced-each-rack'; readonly netWater: number; readonly volume: number }
  | {
      readonly code: 'recharge-too-short'
      readonly seconds: number
      readonly pulses: number | null
      /** mL/min at which the same recharge would take `LEAST_SECONDS` and enough roller pulses */
      readonly flowForLonger: number
    }
  | { readonly code: 'cannot-keep-up'; readonly seconds: number; readonly cycleSeconds: number }
  | { readonly code: 'carried-out-not-known' }
  | { readonly code: 'probe-holds-it' }
