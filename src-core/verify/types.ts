import type { BasisUnit } from '../dose/types'

/** What a chemical check can come out in: a strength, or the hardness of the water. */
export type VerifiedUnit = BasisUnit | 'mg/L-CaCO3'

/** Why reading and prediction differ, most telling first, and so which of the two to distrust. */
export type Distrust =
  /** too few racks since the fill or the change: neither says anything yet */
  | 'tank-not-settled'
  /** the booster still gives water from before the last change of the dose */
  | 'booster-not-through'
  /** ware reads lower than the rinse it was rinsed with */
  | 'read-on-ware'
  /** one more pad of the strip would agree */
  | 'strip-between-pads'
  /** a hardness differs from the one on record, which no pump has a part in */
  | 'hardness-changed'
  /** the product has lost strength since it was recorded */
  | 'product-aged'
  /** the water's own alkalinity was counted as detergent */
  | 'water-not-subtracted'
  /** soil used detergent up, or more water leaves the tank than is recorded */
  | 'soil-or-leak'
  /** the rinse water per rack is the weakest link of the prediction */
  | 'rinse-volume-unsure'
  | 'reading-less-certain'
  | 'prediction-less-certain'

export interface Agreement {
  /** difference over its standard uncertainty, without sign */
  readonly z: number
  /** z below 2: what both uncertainties allow */
  readonly agrees: boolean
  /** reading over prediction less one; null when nothing is predicted */
  readonly relative: number | null
  readonly distrust: Distrust | null
}
