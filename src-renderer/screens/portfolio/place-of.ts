import type { Id } from '#core/records/index'
import type { AttentionReason } from '#core/spend/attention'
import { routeHash } from '../../state/route'

/** Where a reason for attention is looked into. */
export function placeOf(
  reason: AttentionReason,
  siteId: Id,
): { readonly hash: string; readonly label: string } {
  const spend = routeHash({ screen: 'spend', siteId })
  switch (reason.code) {
    case 'running-out':
    case 'order-now':
    case 'past-its-time':
      return { hash: `${spend}?stock`, label: 'See the shelf' }
    case 'unreconciled':
      return { hash: `${spend}?stock`, label: 'See the counts' }
    case 'cost-unknown':
      return { hash: spend, label: 'See what is missing' }
    case 'out-of-window':
    case 'not-tested':
    case 'visit-overdue':
    case 'tubes-overdue':
      return { hash: routeHash({ screen: 'site', siteId }), label: 'Go to the site' }
  }
}
