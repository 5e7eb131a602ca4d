import { adviseTurn } from '#core/screw/advise-turn'
import { runsInstead } from '#core/screw/stop-rule'
import { learn } from '#core/screw/learn'
import { nextMove } from '#core/screw/next-move'
import type { TurnAdvice, TurnQuestion } from '#core/screw/types'
import type { Rules } from './visit'

export type Decision =
  | {
      readonly kind: 'turn'
      readonly eighths: number
      /** back off past the mark and come up clockwise */
      readonly fromBelow: boolean
      readonly expected: { readonly low: number; readonly high: number } | null
    }
  | { readonly kind: 'runs'; readonly more: number }
  | { readonly kind: 'end'; readonly why: string }

/** Sees what a rep sees, and decides what is done next. */
export type Strategy = (question: TurnQuestion, rules: Rules) => Decision

/**
 * The program's own advice, followed to the letter. Where it would rather have more runs, or leave well alone, and the
 * rules allow neither, the move it would make next is made.
 */
export const advice: Strategy = (question, { extraRuns }) => {
  const first = adviseTurn(question)
  const advised = first.kind === 'leave' && !extraRuns ? moveAnyway(question, first) : first
  switch (advised.kind) {
    case 'turn':
      return {
        kind: 'turn',
        eighths: advised.eighths,
        fromBelow: advised.backOffEighths > 0,
        expected: advised.expectedFlow,
      }
    case 'confirm':
      return {
        kind: 'turn',
        eighths: advised.eighths ?? 0,
        fromBelow: (advised.backOffEighths ?? 0) > 0,
        expected: null,
      }
    case 'leave':
      return advised.moreRuns === undefined
        ? { kind: 'end', why: advised.reason }
        : { kind: 'runs', more: advised.moreRuns }
    case 'diagnose':
      return { kind: 'end', why: advised.finding }
    case 'refuse':
      return { kind: 'end', why: advised.reasons.join(' ') }
  }
}

function moveAnyway(question: TurnQuestion, instead: TurnAdvice): TurnAdvice {
  const { observations, target, prior } = question
  const last = observations.at(-1)
  const belief = learn(observations, target, prior, question.playTakenUp ?? false)
  return last === undefined || belief === null ? instead : nextMove(question, last, belief)
}

/**
 * A plain rule of thumb: how far to turn, in eighths. It gets the same good habits around it as the advice (three runs,
 * a refused series is primed and repeated, a few more runs where those would prove the dose), so that only the turn
 * differs. It turns straight to the mark, as people do who do not think of play.
 */
const plain =
  (eighths: (question: TurnQuestion) => number): Strategy =>
  (question, { extraRuns }) => {
    const last = question.observations.at(-1)
    const more = last === undefined || !extraRuns ? null : runsInstead(last, question)
    if (more !== null) return { kind: 'runs', more }
    const towards = Math.sign(question.target - (last?.flow ?? question.target)) || 1
    const wanted = eighths(question)
    return {
      kind: 'turn',
      eighths: Number.isFinite(wanted) && wanted !== 0 ? wanted : towards,
      fromBelow: false,
      expected: null,
    }
  }

const missing = ({ target, observations }: TurnQuestion): number =>
  target - (observations.at(-1)?.flow ?? target)

export const quarterTurns = plain((question) => 2 * Math.sign(missing(question)))

/** Assumes one gain for every pump: that share of the target per turn. */
export const fixedGain = (share: number): Strategy =>
  plain((question) => Math.round((8 * missing(question)) / (share * question.target)))

/** First a quarter turn, then the straight line through the last two tests, two turns at most. */
export const secant = plain((question) => {
  const last = question.observations.at(-1)
  const before = question.observations.at(-2)
  if (last === undefined || before === undefined) return 2 * Math.sign(missing(question))
  const perEighth = (last.flow - before.flow) / (last.eighths - before.eighths)
  return Math.max(-16, Math.min(16, Math.round(missing(question) / perEighth)))
})
