import type { StockCheck, StockFinding, StockReason, StockVerdict } from './reconcile-types'

/**
 * Reasons for a difference in order of likelihood, as found in the trade: common practice, no source. What the site's
 * own evidence settles moves up or down.
 */
const MORE: readonly StockReason[] = [
  'more-racks',
  'pump-drifted-up',
  'false-signals',
  'leak-or-other-use',
  'count-or-booking',
  'priming-losses',
]
const LESS: readonly StockReason[] = [
  'fewer-racks',
  'pump-worn-or-air',
  'bypassed-or-hand-dosed',
  'delivery-not-received',
  'counted-high-or-twice',
  'product-substituted',
]

export interface Evidence {
  readonly verdict: StockVerdict
  readonly findings: readonly StockFinding[]
  /** racks were read off a counter */
  readonly counted: boolean
  /** an as-found test at the end of the period */
  readonly tested: boolean
}

const has = (evidence: Evidence, code: StockFinding['code']): boolean =>
  evidence.findings.some((finding) => finding.code === code)

/** Reasons, most likely first. An as-found test that explains puts the pump first; a counter puts racks last. */
export function reasonsFor(evidence: Evidence): readonly StockReason[] {
  if (evidence.verdict === 'agrees') return []
  const order = evidence.verdict === 'used-more' ? MORE : LESS
  const racks = evidence.verdict === 'used-more' ? 'more-racks' : 'fewer-racks'
  const pump = evidence.verdict === 'used-more' ? 'pump-drifted-up' : 'pump-worn-or-air'
  const weight = (reason: StockReason): number => {
    if (has(evidence, 'booking-error') && reason.startsWith('count')) return -2
    if (reason === pump && has(evidence, 'pump-explains')) return -1
    if (reason === pump && has(evidence, 'pump-does-not-explain')) return 11
    if (reason === racks && evidence.counted) return 10
    return order.indexOf(reason)
  }
  return [...order].sort((a, b) => weight(a) - weight(b))
}

/** Run the as-found draw-down before arguing: it splits pump from racks. */
export function nextCheck(evidence: Evidence): StockCheck {
  if (has(evidence, 'booking-error')) return 'check-bookings'
  if (evidence.verdict === 'agrees') return 'none'
  if (has(evidence, 'pump-explains')) return 'repair-pump'
  if (!evidence.tested) return 'as-found-test'
  if (!evidence.counted) return 'read-rack-counter'
  return evidence.verdict === 'used-more' ? 'look-for-other-use' : 'check-bookings'
}
