import type { Step } from '../records'
import type { PumpPast } from './pump-past'
import type { TestResult } from './types'

/**
 * Whether the screw's play is known to be taken up before the first test on the present tube: every recorded turn ends
 * clockwise, so it is after a turn of this visit; and after one of an earlier visit as long as nobody has touched the
 * screw since, which is believed when the pump was found where it was left, within both 95 % intervals (the E_n score of
 * interlaboratory comparisons, ISO 13528; from memory).
 */
export function playTakenUp(
  steps: readonly Step[],
  first: TestResult | null,
  past: Pick<PumpPast, 'left' | 'turned'> | null,
): boolean {
  if (first === null) return false
  const before = steps.slice(
    0,
    steps.findIndex((step) => step.id === first.testId),
  )
  if (before.some((step) => step.kind === 'turn' && step.eighths !== 0)) return true
  // a new tube gives another flow, and then nothing shows whether the screw was touched
  if (before.some((step) => step.kind === 'tube-fitted')) return false
  if (past === null || past.left === null || !past.turned || !first.flow.ok) return false
  const { value, expanded } = first.flow.value
  return Math.abs(value - past.left.flow) <= Math.hypot(expanded, past.left.expanded)
}
