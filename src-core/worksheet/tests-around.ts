import type { Instant, Step } from '../records'
import type { TestResult } from './types'

/** The tests that tell what a pump gave at one moment of a visit, and what it gave before the last change. */
export interface TestsAround {
  readonly inForce: TestResult | null
  readonly before: TestResult | null
}

const CHANGES: ReadonlySet<Step['kind']> = new Set(['turn', 'tube-fitted'])

/**
 * `at` null: now. A turn of the screw or a new tube ends what tests before it say: a check made before the turn is held
 * against the test before it. Where the pump was not tested as it stood then, the last test of the visit has to do.
 */
export function testsAround(
  steps: readonly Step[],
  tests: readonly TestResult[],
  at: Instant | null,
): TestsAround {
  const changesBefore = (count: (step: Step, index: number) => boolean): number =>
    steps.filter((step, index) => CHANGES.has(step.kind) && count(step, index)).length
  const span = changesBefore((step) => at === null || step.at <= at)
  const spanOf = (test: TestResult): number => {
    const place = steps.findIndex((step) => step.id === test.testId)
    return changesBefore((_, index) => index < place)
  }
  const inForce = tests.findLast((test) => spanOf(test) === span) ?? null
  return {
    inForce: inForce ?? tests.at(-1) ?? null,
    before: inForce === null ? null : (tests.findLast((test) => spanOf(test) < span) ?? null),
  }
}
