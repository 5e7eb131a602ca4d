import type { ScrewObservation, TurnQuestion, TurnRefusal } from './types'

const MOST_FLOW = 1e6
const MOST_EIGHTHS = 1e4

/** What makes a question one that cannot be answered; null when it can. */
export function faultIn(question: TurnQuestion): TurnRefusal | null {
  const { target, low, high, observations, prior, leftUntouched } = question
  const window = low >= 0 && low <= target && target <= high && low < high && target > 0 && high <= MOST_FLOW
  if (!window) return 'no-window'
  if (observations.length === 0) return 'not-tested'
  const known = prior === null || (isFlow(prior.gain) && isFlow(prior.standard))
  const left =
    leftUntouched === undefined ||
    leftUntouched === null ||
    (isFlow(leftUntouched.flow) && isFlow(leftUntouched.expanded))
  return known && left && observations.every(isUsable) ? null : 'inputs-missing'
}

const isFlow = (value: number): boolean => value >= 0 && value <= MOST_FLOW

const isUsable = (o: ScrewObservation): boolean =>
  Number.isInteger(o.eighths) &&
  Math.abs(o.eighths) <= MOST_EIGHTHS &&
  isFlow(o.flow) &&
  isFlow(o.standard) &&
  isFlow(o.expanded ?? 0) &&
  isFlow(o.scatter ?? 0) &&
  isFlow(o.runs ?? 3)
