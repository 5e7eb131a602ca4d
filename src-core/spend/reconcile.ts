import { all, chain, ok, type Outcome } from '../outcome'
import type { Day, Product } from '../records'
import type { Estimate } from '../statistics/estimate'
import { estimate, exactly } from '../statistics/make-estimate'
import { difference, sum } from '../statistics/propagate'
import type { Decimal } from '../units/decimal'
import type { Stocked } from './stock'
import { nextCheck, reasonsFor, type Evidence } from './reasons'
import type { Reconciliation, StockFinding, StockVerdict } from './reconcile-types'

export interface ReconcileInput {
  readonly product: Product
  readonly from: Day
  readonly to: Day
  readonly opening: Outcome<Stocked>
  readonly closing: Outcome<Stocked>
  readonly delivered: Outcome<Decimal>
  /** what the pumps should have used at the settings they were left at */
  readonly theory: Outcome<Estimate<'L'>>
  /** as found over as left, less one, at the end of the period; null when no test says */
  readonly drift: { readonly value: number; readonly standard: number } | null
  /** racks were read off a counter over this period */
  readonly counted: boolean
  /** L in a container */
  readonly container: number | null
}

/** Beyond this many standard uncertainties a difference is more than counting can make. */
const Z_LIMIT = 2

/**
 * Stock against theory. Actual = opening + deliveries - closing; variance = actual - theory; z = variance over the root
 * of the sum of squares of both standard uncertainties; |z| < 2 is within what counting can tell. All in L.
 * A drift explains a variance when the variance over theory lies between half of it (steady wear) and all of it (a
 * sudden change), give or take two standard uncertainties.
 */
export function reconcile(input: ReconcileInput): Reconciliation {
  const opening = chain(input.opening, counted)
  const closing = chain(input.closing, counted)
  const delivered = chain(input.delivered, (litres) => exactly(litres.toNumber(), 'L'))
  const actual = chain(all([opening, delivered, closing]), ([start, came, end]) =>
    chain(sum([start, came], 'L'), (had) => difference(had, end)),
  )
  const variance = chain(all([actual, input.theory]), ([used, should]) => difference(used, should))
  const z = variance.ok && variance.value.standard > 0 ? variance.value.value / variance.value.standard : null
  const theory = input.theory.ok && input.theory.value.value > 0 ? input.theory.value : null
  const relative = variance.ok && theory !== null ? variance.value.value / theory.value : null
  const verdict: Outcome<StockVerdict> = chain(variance, (v) =>
    ok(Math.abs(z ?? 0) < Z_LIMIT ? 'agrees' : v.value > 0 ? 'used-more' : 'used-less'),
  )
  const findings = findingsOf(input, actual, theory, variance, verdict)
  const evidence: Evidence | null = verdict.ok
    ? { verdict: verdict.value, findings, counted: input.counted, tested: input.drift !== null }
    : null
  return {
    productId: input.product.id,
    from: input.from,
    to: input.to,
    opening,
    closing,
    delivered,
    actual,
    theory: input.theory,
    variance,
    relative,
    z,
    verdict,
    findings,
    reasons: evidence === null ? [] : reasonsFor(evidence),
    next: evidence === null ? 'none' : nextCheck(evidence),
  }
}

const counted = (level: Stocked): Outcome<Estimate<'L'>> =>
  estimate(level.litres.toNumber(), 'L', [{ source: 'count', standard: level.standard }])

function findingsOf(
  input: ReconcileInput,
  actual: Outcome<Estimate<'L'>>,
  theory: Estimate<'L'> | null,
  variance: Outcome<Estimate<'L'>>,
  verdict: Outcome<StockVerdict>,
): readonly StockFinding[] {
  const findings: StockFinding[] = []
  if (actual.ok && actual.value.high < 0) findings.push({ code: 'booking-error' })
  const used = Math.max(actual.ok ? actual.value.value : 0, theory?.value ?? 0)
  if (input.container !== null && used / input.container < 2)
    findings.push({ code: 'too-coarse', containers: used / input.container })
  if (input.opening.ok && input.opening.value.partUnknown)
    findings.push({ code: 'part-not-counted', on: input.from })
  if (input.closing.ok && input.closing.value.partUnknown)
    findings.push({ code: 'part-not-counted', on: input.to })
  if (verdict.ok && verdict.value !== 'agrees') {
    if (input.drift !== null && theory !== null && variance.ok)
      findings.push({
        code: explains(input.drift, variance.value, theory) ? 'pump-explains' : 'pump-does-not-explain',
        drift: input.drift.value,
      })
    if (!input.counted) findings.push({ code: 'racks-stated-only' })
  }
  return findings
}

function explains(
  drift: { readonly value: number; readonly standard: number },
  variance: Estimate<'L'>,
  theory: Estimate<'L'>,
): boolean {
  const relative = variance.value / theory.value
  if (Math.sign(relative) !== Math.sign(drift.value)) return false
  const room = Z_LIMIT * Math.hypot(drift.standard, variance.standard / theory.value)
  const [least, most] = [Math.abs(drift.value) / 2 - room, Math.abs(drift.value) + room]
  return (
    Math.abs(drift.value) > Z_LIMIT * drift.standard &&
    Math.abs(relative) >= least &&
    Math.abs(relative) <= most
  )
}
