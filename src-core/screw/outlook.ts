import { normalCdf } from '../statistics/distributions'
import { moveBelief, type Belief, type Hypothesis } from './belief'
import { CALLED_DEAD } from './limits'

/** What a move would bring, seen from today. Chances are 0 to 1, flows mL/min. */
export interface Outlook {
  /** lands where a test can prove it in, if the screw acts */
  readonly lands: number
  /** lands inside the window, whether or not the screw acts */
  readonly inside: number
  /** passes the far edge of the window, whether or not the screw acts */
  readonly passes: number
  /** does not even reach the near edge, if the screw acts */
  readonly short: number
  /** settles the matter: proved in, or shown not to act */
  readonly settles: number
  /** mean and spread of what the next test would show, if the screw acts */
  readonly flow: number
  readonly standard: number
}

export interface Aim {
  readonly low: number
  readonly high: number
  /** how far inside the window a flow must lie for a test to prove it */
  readonly room: number
  /** standard uncertainty of the next test from its scatter */
  readonly scatter: number
}

/** Weighs a net move of `turns`, clockwise positive and not 0, by everything the belief holds. */
export function outlook(belief: Belief, turns: number, aim: Aim): Outlook {
  const after = moveBelief(belief, turns)
  const acting = after.filter((h) => h.acts)
  const share = acting.reduce((sum, h) => sum + h.weight, 0)
  const mean = (of: (h: Hypothesis) => number): number =>
    share > 0 ? acting.reduce((sum, h) => sum + h.weight * of(h), 0) / share : 0
  const above = mean((h) => chanceAbove(h, aim.high))
  const below = mean((h) => 1 - chanceAbove(h, aim.low))
  const lands = mean((h) =>
    Math.max(0, chanceAbove(h, aim.low + aim.room) - chanceAbove(h, aim.high - aim.room)),
  )
  const flow = mean((h) => h.line.flow)
  const variance = mean((h) => h.line.flowVariance + (h.line.flow - flow) ** 2)
  return {
    lands,
    inside: Math.max(0, 1 - above - below) * share,
    passes: (turns > 0 ? above : below) * share,
    short: turns > 0 ? below : above,
    settles: lands * share + (tells(after, aim.scatter) ? 1 - share : 0),
    flow,
    standard: Math.sqrt(variance + aim.scatter ** 2),
  }
}

function chanceAbove(h: Hypothesis, limit: number): number {
  return normalCdf((h.line.flow - limit) / Math.sqrt(Math.max(Number.MIN_VALUE, h.line.flowVariance)))
}

/** Whether a screw that does not act would be called so after this move, if the test then showed what it foretells. */
function tells(after: Belief, scatter: number): boolean {
  const still = after.filter((h) => !h.acts)
  const share = still.reduce((sum, h) => sum + h.weight, 0)
  if (!(share > 0)) return false
  const shown = still.reduce((sum, h) => sum + h.weight * h.line.flow, 0) / share
  const density = (h: Hypothesis): number => {
    const variance = h.line.flowVariance + scatter * scatter
    return (h.weight * Math.exp(-((shown - h.line.flow) ** 2) / (2 * variance))) / Math.sqrt(variance)
  }
  const sum = (acts: boolean): number =>
    after.reduce((total, h) => (h.acts === acts ? total + density(h) : total), 0)
  // A test rarely falls exactly where foretold: a fifth of the density is what remains 1.8 standard deviations off.
  const itself = sum(false) / 5
  return itself > 0 && itself / (itself + sum(true)) >= CALLED_DEAD
}
