import type { Estimate } from '../statistics/estimate'
import { estimate } from '../statistics/make-estimate'
import { deadShare, gainOf, type Belief } from './belief'
import { chooseMove, freeEighths, type Course, type Move } from './choose-move'
import { movesMade } from './diagnose'
import { pooledScatter } from './learn'
import { BACK_OFF, RUNS_AFTER_A_MOVE, SUSPECTED_DEAD, TELLING_MOVE } from './limits'
import { outlook, type Aim } from './outlook'
import { isInside } from './stop-rule'
import type { ScrewObservation, TurnAdvice, TurnQuestion } from './types'

/** Chance of falling short even at the end stop from which turning is no longer worth it. */
const OUT_OF_REACH = 0.95

/** What the gain behind an advice rests on. */
export function learnedFrom({
  observations,
  prior,
}: TurnQuestion): Extract<TurnAdvice, { kind: 'turn' }>['learnedFrom'] {
  if (movesMade(observations) > 0) return 'this-visit'
  return prior === null || prior.from === 'none' ? 'nothing-yet' : prior.from
}

/** The move towards the target, once it is clear that one is wanted; or that the stop is in the way. */
export function nextMove(question: TurnQuestion, last: ScrewObservation, belief: Belief): TurnAdvice {
  const { low, high, target } = question
  const scatter = (target * pooledScatter(question.observations)) / Math.sqrt(RUNS_AFTER_A_MOVE)
  const aim: Aim = { low, high, room: Math.min(2 * scatter, (high - low) / 4), scatter }
  const course: Course = {
    direction: target > last.flow ? 1 : -1,
    target,
    at: last.eighths,
    stops: question.stops ?? { down: null, up: null },
    careful: question.careful ?? false,
  }
  const move = chooseMove(belief, aim, course)
  if (move === null) return { kind: 'diagnose', finding: 'out-of-range', probability: null }
  if (move.cappedBy === 'stop' && !isInside(last, question)) {
    const atStop = outlook(belief, (freeEighths(course) * course.direction) / 8, aim)
    if (atStop.short > OUT_OF_REACH)
      return { kind: 'diagnose', finding: 'out-of-range', probability: atStop.short }
  }
  const dead = deadShare(belief)
  return dead >= SUSPECTED_DEAD && movesMade(question.observations) > 0
    ? confirmation(dead, move, course)
    : turn(question, belief, move, last)
}

/** The screw seems not to act: one more move, large enough to tell. */
function confirmation(probability: number, move: Move, course: Course): TurnAdvice {
  const size = Math.min(freeEighths(course), Math.max(TELLING_MOVE, Math.abs(move.eighths)))
  const eighths = size * course.direction
  return {
    kind: 'confirm',
    finding: 'screw-does-not-act',
    probability,
    eighths,
    backOffEighths: backOff(eighths),
  }
}

function turn(question: TurnQuestion, belief: Belief, move: Move, last: ScrewObservation): TurnAdvice {
  const from = learnedFrom(question)
  const known = gainOf(belief)
  return {
    kind: 'turn',
    eighths: move.eighths,
    backOffEighths: backOff(move.eighths),
    isTestMove: from === 'nothing-yet',
    learnedFrom: from,
    expectedFlow: perMinute(move.outlook.flow, move.outlook.standard),
    gain: from === 'nothing-yet' || known === null ? null : perMinute(known.gain, known.standard),
    remainingEighths: remaining(question.target - last.flow, move, known?.gain ?? 0),
    chance: move.outlook.inside,
  }
}

function remaining(wanted: number, move: Move, gain: number): number {
  if (move.cappedBy === null || !(gain > 0)) return 0
  const left = Math.round((8 * wanted) / gain) - move.eighths
  return Math.sign(left) === Math.sign(move.eighths) ? left : 0
}

const backOff = (eighths: number): number => (eighths < 0 ? BACK_OFF : 0)

function perMinute(value: number, standard: number): Estimate<'mL/min'> | null {
  const made = estimate(value, 'mL/min', [{ source: 'flow', standard }], { predicted: true })
  return made.ok ? made.value : null
}
