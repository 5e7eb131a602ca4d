import type { Day, Id, Step } from '../records'
import type { Estimate } from '../statistics/estimate'
import { daysBetween } from '../units/days'
import type { Break, FlowTest, PumpHistory } from './types'

/** One visit as far as it concerns one pump. */
export interface HistoryVisit {
  readonly visitId: Id
  readonly day: Day
  readonly steps: readonly Step[]
  /** flow of each test of the visit that can be trusted, mL/min, by its id */
  readonly flows: ReadonlyMap<Id, Estimate<'mL/min'>>
  readonly productId: Id | null
  /** what the record says of the tube at this visit */
  readonly tubeFittedOn: Day | null
}

/**
 * The life of a pump as one list, oldest first: trusted tests, and what happened between them. A tube on record as
 * fitted since the visit before counts as fitted before the first test of this one, unless a step of the visit says when.
 */
export function pumpHistory(visits: readonly HistoryVisit[]): PumpHistory {
  const history: (FlowTest | Break)[] = []
  let before: HistoryVisit | null = null
  for (const visit of visits) {
    if (before !== null) history.push(...between(before, visit))
    for (const step of visit.steps) {
      const day = step.at.slice(0, 10)
      if (step.kind === 'turn' && step.eighths !== 0) history.push({ kind: 'turn', day })
      else if (step.kind === 'tube-fitted') history.push({ kind: 'tube', day })
      else if (step.kind === 'test') {
        const flow = visit.flows.get(step.id)
        if (flow !== undefined && flow.value > 0)
          history.push({ kind: 'test', visitId: visit.visitId, testId: step.id, day, flow })
      }
    }
    before = visit
  }
  return history
}

function between(before: HistoryVisit, visit: HistoryVisit): readonly Break[] {
  const fitted = visit.tubeFittedOn
  const told = visit.steps.some((step) => step.kind === 'tube-fitted')
  // within a day: a record is of the day at the site, a step of the day in Greenwich
  const known = before.steps.some(
    (step) => step.kind === 'tube-fitted' && fitted !== null && Math.abs(daysBetween(step.at, fitted)) <= 1,
  )
  const tube =
    fitted !== null &&
    fitted !== before.tubeFittedOn &&
    fitted >= before.day &&
    fitted <= visit.day &&
    !told &&
    !known
  return [
    ...(tube ? [{ kind: 'tube' as const, day: fitted }] : []),
    ...(before.productId === visit.productId ? [] : [{ kind: 'product' as const, day: visit.day }]),
  ]
}
