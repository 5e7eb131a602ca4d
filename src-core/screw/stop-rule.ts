import { coverage95 } from '../statistics/distributions'
import { effectiveDegreesOfFreedom } from '../statistics/degrees-of-freedom'
import { MOST_RUNS, RUNS_INSTEAD } from './limits'
import type { ScrewObservation } from './types'

export interface FlowWindow {
  readonly low: number
  readonly high: number
}

/** Half-width of the 95 % interval of a test, mL/min. */
export const expandedOf = (o: ScrewObservation): number => o.expanded ?? coverage95(null) * o.standard

/** The whole 95 % interval lies in the window. */
export const isProvedIn = (o: ScrewObservation, { low, high }: FlowWindow): boolean =>
  o.flow - expandedOf(o) >= low && o.flow + expandedOf(o) <= high

export const isInside = (o: ScrewObservation, { low, high }: FlowWindow): boolean =>
  o.flow >= low && o.flow <= high

/**
 * Further runs of the same length that would prove the flow in, if they show the same mean and scatter; null when that
 * takes more of them than a move costs. The scatter of the mean falls with the root of the runs, what they share stays.
 */
export function runsInstead(o: ScrewObservation, window: FlowWindow): number | null {
  if (!isInside(o, window)) return null
  const runs = o.runs ?? 3
  const scatter = Math.min(o.standard, o.scatter ?? o.standard)
  const shared = Math.sqrt(Math.max(0, o.standard ** 2 - scatter ** 2))
  for (let more = 1; more <= RUNS_INSTEAD && runs + more <= MOST_RUNS; more++) {
    const count = runs + more
    const lines = [
      { standard: scatter * Math.sqrt(runs / count), degreesOfFreedom: count - 1 },
      { standard: shared, degreesOfFreedom: null },
    ]
    const standard = Math.hypot(...lines.map((line) => line.standard))
    const expanded = coverage95(effectiveDegreesOfFreedom(lines)) * standard
    if (isProvedIn({ ...o, standard, expanded }, window)) return more
  }
  return null
}
