import type { Decision, Verdict } from '#core/dose/types'
import type { Estimate } from '#core/statistics/estimate'
import { unfitFor } from '#core/worksheet/judged-state'
import type { PumpVisit } from '#core/worksheet/types'

/** One measured dose on the window's own basis, as the dose picture draws it. */
export interface DoseRound {
  readonly id: string
  /** which series it was, in words */
  readonly label: string
  readonly kind: 'as-found' | 'round' | 'now'
  /** `cannot-tell` where the series is unfit to decide by */
  readonly verdict: Verdict | 'cannot-tell'
  readonly estimate: Estimate
}

export interface DoseWindow {
  readonly low: number
  readonly target: number
  readonly high: number
}

/** What the dose picture shows of one pump: its window and every round on that window's basis. Null without either. */
export interface DoseStory {
  readonly window: DoseWindow
  readonly rounds: readonly DoseRound[]
}

/** What the last round is: where the pump stands, how it was left, or how it stood before the screw was turned again. */
export type LastLabel = 'Now' | 'As left' | 'Before'

/**
 * The rounds of a pump's visit, oldest first. A round that could not be computed, or is on another basis than the last, is left out rather than drawn
 * where it does not belong.
 */
export function doseStory(pump: PumpVisit, last: LastLabel): DoseStory | null {
  const decided = pump.tests.flatMap((test, index) =>
    test.decision.ok ? [{ test, index, decision: test.decision.value }] : [],
  )
  const latest = decided.at(-1)
  if (latest === undefined) return null
  const alike = decided.filter(({ decision }) => decision.basis === latest.decision.basis)
  const rounds = alike.map(({ test, index, decision }): DoseRound => {
    const kind = index === 0 ? 'as-found' : test === latest.test ? 'now' : 'round'
    return {
      id: test.testId,
      label: kind === 'as-found' ? 'As found' : kind === 'now' ? last : `Round ${index + 1}`,
      kind,
      verdict: unfitFor(test) === null ? decision.verdict : 'cannot-tell',
      estimate: decision.value,
    }
  })
  const { low, target, high }: Decision = latest.decision
  return { window: { low, target, high }, rounds }
}
