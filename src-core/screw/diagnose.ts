import { deadShare, type Belief } from './belief'
import { CALLED_DEAD, MOST_MOVES, NO_FLOW, WORN_BELOW } from './limits'
import { expandedOf } from './stop-rule'
import type { ScrewObservation, TurnAdvice, TurnQuestion } from './types'

type Diagnosis = Extract<TurnAdvice, { kind: 'diagnose' }>

/** Moves made: tests at another position than the one before. */
export const movesMade = (observations: readonly ScrewObservation[]): number =>
  observations.filter((o, i) => i > 0 && o.eighths !== observations[i - 1]?.eighths).length

/** What the tests say that no turn will mend, the gravest first; null when a turn may help. */
export function diagnose(question: TurnQuestion, belief: Belief): Diagnosis | null {
  const { observations, target } = question
  const last = observations.at(-1)
  const moves = movesMade(observations)
  if (last === undefined) return null
  if (last.flow < NO_FLOW * target && !cameDown(observations)) return found('no-flow', null)
  if (moves === 0) return isWorn(question, last) ? found('worn-tube-or-leak', null) : null
  if (wentTheWrongWay(observations)) return found('wrong-way', null)
  const dead = deadShare(belief)
  if (dead >= CALLED_DEAD) return found('screw-does-not-act', dead)
  return moves >= MOST_MOVES ? found('too-many-moves', null) : null
}

/**
 * Found well below what was left with the screw untouched: below 80 %, and the two intervals cannot both be right,
 * |q1 - q2| > sqrt(U1^2 + U2^2) (the E_n score of interlaboratory comparisons, ISO 13528; from memory).
 */
function isWorn({ leftUntouched }: TurnQuestion, found: ScrewObservation): boolean {
  if (leftUntouched === undefined || leftUntouched === null) return false
  const drop = leftUntouched.flow - found.flow
  return (
    found.flow < WORN_BELOW * leftUntouched.flow &&
    drop > Math.hypot(leftUntouched.expanded, expandedOf(found))
  )
}

/** A flow turned down to nothing is no wonder. */
const cameDown = (observations: readonly ScrewObservation[]): boolean =>
  (observations.at(-1)?.eighths ?? 0) < (observations.at(-2)?.eighths ?? 0)

/** The last move changed the flow against its direction by more than twice the 95 % uncertainty of a difference. */
function wentTheWrongWay(observations: readonly ScrewObservation[]): boolean {
  const last = observations.at(-1)
  const before = observations.at(-2)
  if (last === undefined || before === undefined) return false
  const direction = Math.sign(last.eighths - before.eighths)
  const limit = 2 * Math.hypot(expandedOf(last), expandedOf(before))
  return direction * (last.flow - before.flow) < -limit
}

const found = (finding: Diagnosis['finding'], probability: number | null): Diagnosis => ({
  kind: 'diagnose',
  finding,
  probability,
})
