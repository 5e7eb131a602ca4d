import type { Outcome } from '../outcome'
import type { Day, Id } from '../records'
import type { Estimate } from '../statistics/estimate'

export type StockVerdict = 'agrees' | 'used-more' | 'used-less'

/** Why more, or less, went than the pumps account for. */
export type StockReason =
  | 'more-racks'
  | 'pump-drifted-up'
  | 'false-signals'
  | 'leak-or-other-use'
  | 'count-or-booking'
  | 'priming-losses'
  | 'fewer-racks'
  | 'pump-worn-or-air'
  | 'bypassed-or-hand-dosed'
  | 'delivery-not-received'
  | 'counted-high-or-twice'
  | 'product-substituted'

export type StockFinding =
  /** less than two containers were emptied: counting cannot tell much */
  | { readonly code: 'too-coarse'; readonly containers: number }
  /** more was counted at the end than there can have been */
  | { readonly code: 'booking-error' }
  | { readonly code: 'part-not-counted'; readonly on: Day }
  /** the as-found test explains the difference by itself */
  | { readonly code: 'pump-explains'; readonly drift: number }
  | { readonly code: 'pump-does-not-explain'; readonly drift: number }
  | { readonly code: 'racks-stated-only' }

/** The cheapest thing that separates pump from racks from counting. */
export type StockCheck =
  'as-found-test' | 'read-rack-counter' | 'check-bookings' | 'repair-pump' | 'look-for-other-use' | 'none'

/** Stock counted against what the pumps should have used, for one product between two counts. */
export interface Reconciliation {
  readonly productId: Id
  readonly from: Day
  readonly to: Day
  readonly opening: Outcome<Estimate<'L'>>
  readonly closing: Outcome<Estimate<'L'>>
  readonly delivered: Outcome<Estimate<'L'>>
  readonly actual: Outcome<Estimate<'L'>>
  readonly theory: Outcome<Estimate<'L'>>
  /** actual - theory */
  readonly variance: Outcome<Estimate<'L'>>
  /** variance over theory */
  readonly relative: number | null
  /** variance over its standard uncertainty */
  readonly z: number | null
  readonly verdict: Outcome<StockVerdict>
  readonly findings: readonly StockFinding[]
  /** most likely first; none when the two agree */
  readonly reasons: readonly StockReason[]
  readonly next: StockCheck
}
