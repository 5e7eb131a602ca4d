import { fail, ok, type Outcome } from '../outcome'
import type { Estimate } from '../statistics/estimate'
import type { VerifiedUnit } from './types'

/** A difference of this many standard uncertainties is more than chance: about one in twenty. */
export const AGREES_BELOW = 2

/**
 * Whether a reading and a prediction, both in one unit, agree within what both uncertainties allow:
 * z = |m - p| / sqrt(u_m^2 + u_p^2), agreeing below 2. Two that are known exactly agree only when equal.
 *
 * Problems: `outside-valid-range` for different units or numbers that are not finite; `no-scatter` when both are said
 * to be exact and differ. Source: JCGM 100:2008 (GUM) 5.1.2 for the difference; the limit is the usual 95 %.
 */
export function compareStrengths(
  measured: Estimate<VerifiedUnit>,
  predicted: Estimate<VerifiedUnit>,
): Outcome<{ readonly z: number; readonly agrees: boolean; readonly relative: number | null }> {
  const apart = Math.abs(measured.value - predicted.value)
  const doubt = Math.hypot(measured.standard, predicted.standard)
  if (measured.unit !== predicted.unit || !Number.isFinite(apart) || !Number.isFinite(doubt))
    return fail({ code: 'cannot-compute', reason: 'outside-valid-range' })
  const ratio = measured.value / predicted.value - 1
  const relative = Number.isFinite(ratio) ? ratio : null
  if (apart === 0) return ok({ z: 0, agrees: true, relative })
  const z = apart / doubt
  if (!Number.isFinite(z)) return fail({ code: 'cannot-compute', reason: 'no-scatter' })
  return ok({ z, agrees: z < AGREES_BELOW, relative })
}
