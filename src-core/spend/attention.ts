import type { Day, Id } from '../records'
import { daysBetween } from '../units/days'
import type { Reconciliation } from './reconcile-types'
import type { PlannedOrder } from './reorder'
import type { Outlasting } from './shelf-life'

/** Why a site wants somebody's attention, the most urgent kind first. */
export type AttentionReason =
  | { readonly code: 'out-of-window'; readonly pumps: number }
  | { readonly code: 'running-out'; readonly productId: Id; readonly days: number; readonly runsOutOn: Day }
  | { readonly code: 'visit-overdue'; readonly days: number }
  | { readonly code: 'unreconciled'; readonly productId: Id; readonly relative: number }
  | { readonly code: 'order-now'; readonly productId: Id; readonly containers: number }
  | { readonly code: 'past-its-time'; readonly productId: Id; readonly keepsUntil: Day }
  /** `days`: the longest that one of them is over its time */
  | { readonly code: 'tubes-overdue'; readonly tubes: number; readonly days: number }
  | { readonly code: 'not-tested'; readonly pumps: number }
  | { readonly code: 'cost-unknown'; readonly lines: number }

export interface AttentionInput {
  readonly asOf: Day
  readonly outOfWindow: number
  readonly notTested: number
  readonly nextVisitOn: Day | null
  /** days over its time, of each tube that is */
  readonly overdueTubes: readonly number[]
  readonly reorders: readonly PlannedOrder[]
  /** the latest of each product */
  readonly reconciliations: readonly Reconciliation[]
  /** what is on the shelf and not used up while it keeps */
  readonly outlasting: readonly (Outlasting & { readonly productId: Id })[]
  readonly unknownLines: number
}

/** What stands out at a site. Running out: the shelf is empty before an order placed today would arrive. */
export function attentionOf(input: AttentionInput): readonly AttentionReason[] {
  const reasons: AttentionReason[] = []
  if (input.outOfWindow > 0) reasons.push({ code: 'out-of-window', pumps: input.outOfWindow })
  const short = input.reorders.filter((item) => item.daysOfCover <= item.leadDays)
  for (const item of short)
    reasons.push({
      code: 'running-out',
      productId: item.productId,
      days: Math.floor(item.daysOfCover),
      runsOutOn: item.runsOutOn,
    })
  const late = input.nextVisitOn === null ? 0 : daysBetween(input.nextVisitOn, input.asOf)
  if (late > 0) reasons.push({ code: 'visit-overdue', days: late })
  for (const item of input.reconciliations)
    if (item.verdict.ok && item.verdict.value !== 'agrees')
      reasons.push({ code: 'unreconciled', productId: item.productId, relative: item.relative ?? 0 })
  for (const item of input.reorders)
    if (item.orderNow && !short.includes(item))
      reasons.push({ code: 'order-now', productId: item.productId, containers: item.containers })
  for (const { productId, keepsUntil, past } of input.outlasting)
    if (past) reasons.push({ code: 'past-its-time', productId, keepsUntil })
  if (input.overdueTubes.length > 0)
    reasons.push({
      code: 'tubes-overdue',
      tubes: input.overdueTubes.length,
      days: Math.max(...input.overdueTubes),
    })
  if (input.notTested > 0) reasons.push({ code: 'not-tested', pumps: input.notTested })
  if (input.unknownLines > 0) reasons.push({ code: 'cost-unknown', lines: input.unknownLines })
  return reasons
}

/** How heavy a reason is. */
const WEIGHT: Readonly<Record<AttentionReason['code'], number>> = {
  'out-of-window': 7,
  'running-out': 6,
  'visit-overdue': 5,
  unreconciled: 4,
  'order-now': 3,
  'past-its-time': 3,
  'tubes-overdue': 3,
  'not-tested': 2,
  'cost-unknown': 1,
}

/** How pressing a site is: its heaviest reason counts, then how many it has. */
export const pressing = (reasons: readonly AttentionReason[]): number =>
  reasons.reduce((most, reason) => Math.max(most, WEIGHT[reason.code]), 0) * 100 + reasons.length
