import type { EntryOf, NumberText } from '../units/entry'
import type { CurrencyCode, Day, Id } from './basics'

export type ProductRole = 'rinse-aid' | 'detergent' | 'sanitizer' | 'delimer' | 'other'

/**
 * How strong the product is in its active substance.
 * `trade-percent`: g available chlorine per 100 mL. `weight-percent`: g active per 100 g.
 */
export type Strength =
  | { readonly kind: 'none' }
  | { readonly kind: 'trade-percent'; readonly percent: NumberText; readonly measuredOn: Day | null }
  | {
      readonly kind: 'weight-percent'
      readonly percent: NumberText
      readonly active: ActiveSubstance
      readonly measuredOn: Day | null
    }

export type ActiveSubstance = 'available-chlorine' | 'quat' | 'iodine' | 'surfactant' | 'alkali' | 'other'

/** What can hurt. Drives which cautions are shown, and which products must never meet. */
export type Hazard =
  'corrosive' | 'alkaline' | 'acid' | 'chlorine' | 'ammonia-or-quat' | 'iodine' | 'irritant'

/** The price of one container from a day on. A new container size is a new row. */
export interface PriceRow {
  readonly from: Day
  readonly currency: CurrencyCode
  /** per container */
  readonly price: NumberText
  readonly containerSize: EntryOf<'volume'>
}

export interface Product {
  readonly id: Id
  readonly name: string
  readonly role: ProductRole
  readonly density: EntryOf<'density'> | null
  readonly strength: Strength
  readonly hazards: readonly Hazard[]
  readonly containerSize: EntryOf<'volume'> | null
  readonly prices: readonly PriceRow[]
  /** What the label allows, in the basis the label speaks; the program never supplies one. */
  readonly labelLimits: {
    readonly basis: 'mg-per-L-active' | 'ppm-vv' | 'g-per-L-tank'
    readonly low: NumberText | null
    readonly high: NumberText | null
  } | null
  /** Where the safety data sheet is kept. */
  readonly safetySheet: string
  readonly deliveredOn: Day | null
  readonly shelfLifeDays: NumberText | null
  readonly leadTimeDays: NumberText | null
}
