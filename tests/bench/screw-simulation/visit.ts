import { turnGate } from '#core/screw/turn-gate'
import { isProvedIn } from '#core/screw/stop-rule'
import type { GainPrior, ScrewObservation, TurnQuestion } from '#core/screw/types'
import { series } from './measure'
import type { Strategy } from './strategies'
import type { VirtualPump } from './virtual-pump'

export interface Known {
  readonly prior: GainPrior | null
  readonly playTakenUp: boolean
  readonly leftUntouched: NonNullable<TurnQuestion['leftUntouched']> | null
}

export interface VisitPlayed {
  readonly turns: number
  readonly provedIn: boolean
  /** why it ended, when not proved in */
  readonly ended: string
  readonly extraRuns: number
  /** moves that went away from the target, by the pump's truth */
  readonly wrongWay: number
  /** times the tube was looked at for nothing */
  readonly tubeLooks: number
  /** turns made when the series was first refused; null when it never was */
  readonly refusedAfter: number | null
  /** tests after a move, and those that fell inside the interval foretold */
  readonly foretold: number
  readonly asForetold: number
  readonly observations: readonly ScrewObservation[]
}

/** What a visit may take. Equal for every strategy. */
export interface Rules {
  /** false: every test is three runs, and only a move leads to another test */
  readonly extraRuns: boolean
}
export const EXTRA_RUNS: Rules = { extraRuns: true }
export const THREE_RUNS: Rules = { extraRuns: false }

const RUNS = 3
const MOST_TURNS = 12
const NOTHING_KNOWN: Known = { prior: null, playTakenUp: false, leftUntouched: null }

/** Plays one visit: test, decide, turn, test, until proved in or given up. Window: target +- 10 %. */
export function playVisit(
  pump: VirtualPump,
  strategy: Strategy,
  { known = NOTHING_KNOWN, rules = EXTRA_RUNS }: { readonly known?: Known; readonly rules?: Rules } = {},
): VisitPlayed {
  const window = { target: pump.target, low: 0.9 * pump.target, high: 1.1 * pump.target }
  const runsNow = (count: number): number[] => Array.from({ length: count }, () => pump.run())
  const observations: ScrewObservation[] = []
  const tally = { turns: 0, extraRuns: 0, wrongWay: 0, tubeLooks: 0, foretold: 0, asForetold: 0 }
  let { leftUntouched } = known
  let refusedAfter: number | null = null
  let refusals = 0
  let eighths = 0
  let runs = runsNow(RUNS)
  const done = (ended: string): VisitPlayed => ({
    ...tally,
    provedIn: ended === 'proved-in',
    ended,
    refusedAfter,
    observations,
  })
  for (;;) {
    const { observation, quality } = series(runs, eighths)
    const gate = turnGate({
      setBy: 'screw',
      hasWindow: true,
      inputsComplete: true,
      quality,
      conditions: 'ok',
      cautionsAcknowledged: true,
    })
    if (gate.length > 0) {
      refusedAfter ??= tally.turns
      refusals += 1
      if (refusals > 2) return done('series refused')
      pump.prime()
      runs = runsNow(refusals === 1 || !rules.extraRuns ? RUNS : 5)
      continue
    }
    refusals = 0
    if (isProvedIn(observation, window)) {
      observations.push(observation)
      return done('proved-in')
    }
    const question: TurnQuestion = {
      ...window,
      observations: [...observations, observation],
      prior: known.prior,
      playTakenUp: known.playTakenUp,
      leftUntouched,
    }
    const decision = strategy(question, rules)
    if (decision.kind === 'runs') {
      tally.extraRuns += decision.more
      runs = [...runs, ...runsNow(decision.more)]
      continue
    }
    if (decision.kind === 'end' && decision.why === 'worn-tube-or-leak' && pump.condition !== 'worn') {
      // The rep looks at the tube, as told, and sees that it is sound.
      leftUntouched = null
      tally.tubeLooks += 1
      continue
    }
    observations.push(observation)
    if (decision.kind === 'end') return done(decision.why)
    if (tally.turns === MOST_TURNS) return done('given up')
    leftUntouched = null
    if (Math.sign(decision.eighths) !== Math.sign(pump.target - pump.flow())) tally.wrongWay += 1
    if (decision.fromBelow) {
      pump.turn((decision.eighths - 2) / 8)
      pump.turn(2 / 8)
    } else pump.turn(decision.eighths / 8)
    eighths += decision.eighths
    tally.turns += 1
    runs = runsNow(RUNS)
    if (decision.expected !== null) {
      const shown = series(runs, eighths).observation.flow
      tally.foretold += 1
      if (shown >= decision.expected.low && shown <= decision.expected.high) tally.asForetold += 1
    }
  }
}
