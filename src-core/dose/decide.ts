import type { Estimate } from '../statistics/estimate'
import type { WindowNumbers } from './read-window'
import { settlingStep, type Settling } from './settling-step'
import type { BasisUnit, Decision, Verdict } from './types'

/**
 * The verdict on a measured dose with a guard band as wide as its 95 % interval, both on the window's own basis:
 * proved in when the whole interval lies inside, proved out when none of it does, else in or out by the value and not
 * proved. A forecast from a single run proves nothing either way.
 * Source of the rule: JCGM 106:2012, guarded acceptance and rejection (from memory).
 */
export function verdictOf(value: Estimate<BasisUnit>, window: WindowNumbers): Verdict {
  const inside = value.value >= window.low && value.value <= window.high
  if (inside)
    return !value.predicted && value.low >= window.low && value.high <= window.high
      ? 'proved-in'
      : 'in-not-proved'
  return !value.predicted && (value.low > window.high || value.high < window.low)
    ? 'proved-out'
    : 'out-not-proved'
}

/**
 * The decision on a dose: verdict and, while it is open, the cheapest thing that would settle it. `settling` says
 * where the series stands and what instruments are at hand; null leaves the step out. Where nothing flows no test settles
 * anything, and none is offered.
 */
export function decide(
  value: Estimate<BasisUnit>,
  window: WindowNumbers,
  settling: Settling | null,
): Decision {
  const verdict = verdictOf(value, window)
  const open = verdict === 'in-not-proved' || verdict === 'out-not-proved'
  return {
    verdict,
    basis: window.basis,
    value,
    low: window.low,
    target: window.target,
    high: window.high,
    settle: open && settling !== null && value.value > 0 ? settlingStep(value, window, settling) : null,
  }
}
