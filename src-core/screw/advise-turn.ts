import { gainOf, type Belief } from './belief'
import { diagnose } from './diagnose'
import { learn } from './learn'
import { learnedFrom, nextMove } from './next-move'
import { isProvedIn, runsInstead } from './stop-rule'
import type { ScrewObservation, TurnAdvice, TurnQuestion } from './types'
import { faultIn } from './usable-question'

/**
 * The next move of the adjustment screw, or why none: leave it, confirm, look elsewhere.
 *
 * A Bayesian line of flow against turns, with level and gain both unknown, is learnt from this visit's own tests; what
 * is believed of the gain beforehand comes from earlier visits, else from pumps of the same kind, else from nothing
 * (a test move). The move is the one that most likely settles the matter, in eighths, clockwise raising the flow, and
 * always towards the target. `limits.ts` holds what it is weighed by. Flows in mL/min, gain in mL/min per turn.
 *
 * Refuses: `not-tested` without a test, `no-window` for limits out of order, `inputs-missing` for numbers outside
 * 0 to 1e6 mL/min.
 */
export function adviseTurn(question: TurnQuestion): TurnAdvice {
  const fault = faultIn(question)
  if (fault !== null) return { kind: 'refuse', reasons: [fault] }
  const { observations, target, prior } = question
  const last = observations.at(-1)
  const belief = learn(observations, target, prior, question.playTakenUp ?? false)
  if (last === undefined || belief === null) return { kind: 'refuse', reasons: ['not-tested'] }
  if (isProvedIn(last, question)) return { kind: 'leave', reason: 'proved-in' }
  const elsewhere = diagnose(question, belief)
  if (elsewhere !== null) return elsewhere
  const moreRuns = runsInstead(last, question)
  if (moreRuns !== null) return { kind: 'leave', reason: 'not-worth-a-move', moreRuns }
  if (last.flow === target) return { kind: 'leave', reason: 'not-worth-a-move' }
  if (isSmall(question, last, belief)) return { kind: 'leave', reason: 'within-half-a-step' }
  return nextMove(question, last, belief)
}

/** The error is less than half an eighth would change: g/16. Says nothing while the gain is a guess. */
function isSmall(question: TurnQuestion, last: ScrewObservation, belief: Belief): boolean {
  const known = learnedFrom(question) === 'nothing-yet' ? null : gainOf(belief)
  return known !== null && Math.abs(question.target - last.flow) <= known.gain / 16
}
