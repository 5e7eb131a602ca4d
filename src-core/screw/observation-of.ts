import type { BudgetSource, Estimate } from '../statistics/estimate'
import type { ScrewObservation } from './types'

/** What all tests of a visit share, so that it cancels between them. */
const SHARED: ReadonlySet<BudgetSource> = new Set(['cylinder-tolerance', 'scale', 'tube-factor', 'density'])

/**
 * A test as the learner sees it: flow, mL/min, its uncertainty, and which part of that is scatter of its own.
 * `eighths`: net position since the witness mark. `runs`: those that count.
 */
export const observationOf = (eighths: number, flow: Estimate<'mL/min'>, runs: number): ScrewObservation => ({
  eighths,
  flow: flow.value,
  standard: flow.standard,
  expanded: flow.expanded,
  scatter: Math.hypot(...flow.budget.filter((line) => !SHARED.has(line.source)).map((line) => line.standard)),
  runs,
})
