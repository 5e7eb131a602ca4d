import type { GradedFinding } from '../drawdown/types'
import type { PumpState, TestResult } from './types'

/**
 * Findings that leave the decision as it is: few runs, or one that lies apart, are in its interval already, and nothing
 * flowing is a finding itself.
 */
const SAYS_ITSELF: ReadonlySet<GradedFinding['code']> = new Set(['too-few-runs', 'outlier', 'no-flow'])

/** What makes a series unfit to judge a pump by: air, a trend, scatter. Null when nothing does. */
export const unfitFor = (test: Pick<TestResult, 'quality'>): GradedFinding | null =>
  test.quality.findings.find((finding) => finding.severity === 'stops' && !SAYS_ITSELF.has(finding.code)) ??
  null

/** Where a pump stands by one test: its decision, unless the series is unfit to decide by. */
export function judgedState(test: TestResult | null): PumpState {
  if (test === null) return 'not-tested'
  return test.decision.ok && unfitFor(test) === null ? test.decision.value.verdict : 'cannot-tell'
}
