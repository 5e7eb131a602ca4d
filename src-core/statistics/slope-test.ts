import { tTwoSided } from './distributions'
import type { LineFit } from './line-fit'

export interface SlopeTest {
  readonly slope: number
  /** slope over its standard error; cut at 1e6, which a line without scatter reaches */
  readonly t: number
  /** two-sided probability of a slope at least this steep when there is no trend */
  readonly p: number
  readonly degreesOfFreedom: number
}

const LARGEST_T = 1e6

/** Whether a fitted line really slopes: t test with n - 2 degrees of freedom. Null below three points. */
export function slopeTest(fit: LineFit): SlopeTest | null {
  if (fit.slopeError === null) return null
  const ratio = fit.slope === 0 ? 0 : fit.slope / fit.slopeError
  const t = Math.max(-LARGEST_T, Math.min(LARGEST_T, ratio))
  return {
    slope: fit.slope,
    t,
    p: tTwoSided(t, fit.degreesOfFreedom),
    degreesOfFreedom: fit.degreesOfFreedom,
  }
}
