import { normalQuantile } from '../statistics/distributions'

export interface ReorderPointInput {
  /** mean use, L a day */
  readonly perDay: number
  /** day-to-day standard deviation of use, L a day */
  readonly perDaySpread: number
  /** days from order to delivery, and their standard deviation */
  readonly leadDays: number
  readonly leadDaysSpread: number
  /** standard uncertainty of the mean use itself, L a day: wrong the same way on every day */
  readonly perDayDoubt: number
  /** chance of no run-out in one cycle, 0.5 to 0.9999 */
  readonly serviceLevel: number
}

export interface ReorderPoint {
  readonly z: number
  readonly leadTimeDemand: number
  /** standard deviation of demand over the lead time */
  readonly spread: number
  readonly safetyStock: number
  readonly reorderPoint: number
}

/**
 * Safety stock and reorder point, L: ROP = d L + z s, s = sqrt(L s_d^2 + d^2 s_L^2 + (L u_d)^2). The last term is the
 * doubt about the mean use, which a textbook takes as known; with u_d = 0 this is the textbook's form.
 * Source: W. J. Stevenson, Operations Management, 14th ed., ch. 12, reorder point with variable demand and lead time.
 */
export function reorderPoint(input: ReorderPointInput): ReorderPoint {
  const { perDay: d, leadDays: L } = input
  const z = normalQuantile(Math.min(0.9999, Math.max(0.5, input.serviceLevel)))
  const spread = Math.hypot(
    Math.sqrt(L) * input.perDaySpread,
    d * input.leadDaysSpread,
    L * input.perDayDoubt,
  )
  const leadTimeDemand = d * L
  const safetyStock = z * spread
  return { z, leadTimeDemand, spread, safetyStock, reorderPoint: leadTimeDemand + safetyStock }
}
