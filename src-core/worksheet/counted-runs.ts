import type { TestResult } from './types'

/** Runs of a test that count: not excluded, and worked out. */
export const countedRuns = (test: Pick<TestResult, 'runs'>): number =>
  test.runs.filter((run) => run.excluded === null && run.flow.ok).length
