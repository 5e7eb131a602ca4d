import { gainView } from './gain-view'
import { BEND, DEAD_GAIN, DEAD_SHARE, STALLS } from './limits'
import { logLikelihood, moveLine, observeLine, startLine, type Line } from './line'
import type { GainPrior } from './types'

/** One explanation of what was seen: a line, the play the screw had as found, and whether the screw acts at all. */
export interface Hypothesis {
  readonly line: Line
  /** turns the first move loses */
  readonly play: number
  readonly acts: boolean
  /** share of belief; all shares add up to 1 */
  readonly weight: number
}

/** Rival explanations of one screw; each is a Bayesian line, the weights are their odds. Never empty. */
export type Belief = readonly Hypothesis[]

/**
 * Play of a screw last set by somebody unknown: half of them came up clockwise and left none, the others left all of
 * it, up to a quarter turn. Turns, with their shares.
 */
const PLAY_UNKNOWN = [
  { play: 0, weight: 0.5 },
  { play: 0.03, weight: 0.18 },
  { play: 0.09, weight: 0.16 },
  { play: 0.15, weight: 0.1 },
  { play: 0.22, weight: 0.06 },
] as const
const NO_PLAY = [{ play: 0, weight: 1 }] as const

/** The belief after the as-found test. `scale`: the target flow; `flow`, `standard`: the test; all mL/min. */
export function startBelief(
  scale: number,
  flow: number,
  standard: number,
  prior: GainPrior | null,
  playTakenUp: boolean,
): Belief {
  const seen = (gain: number, spread: number): Line =>
    observeLine(startLine(flow, standard, gain, spread), flow, standard)
  const acting = gainView(scale, prior).flatMap((node) =>
    (playTakenUp ? NO_PLAY : PLAY_UNKNOWN).map(({ play, weight }) => ({
      line: seen(node.gain, node.standard),
      play,
      acts: true,
      weight: node.weight * weight * (1 - DEAD_SHARE),
    })),
  )
  return [...acting, { line: seen(0, DEAD_GAIN * scale), play: 0, acts: false, weight: DEAD_SHARE }]
}

/**
 * The belief after a net move of `turns` that ended clockwise, before it is measured. The first move loses the play the
 * screw had: upward it is partly used up, downward the way back up does not reach as far.
 */
export const moveBelief = (belief: Belief, turns: number): Belief =>
  turns === 0
    ? belief
    : belief.map((h) => ({ ...h, line: moveLine(h.line, turns - h.play, h.acts ? BEND : 0), play: 0 }))

/**
 * The belief after a move upward was made: in each explanation the screw may also have come to the end of what it can
 * do somewhere on the way, with a worn tube or a blocked line, and acts no more.
 */
export function stallBelief(before: Belief, after: Belief, turns: number): Belief {
  if (turns <= 0) return after
  return after.flatMap((h, i): Belief => {
    const from = before[i]
    if (!h.acts || from === undefined) return [h]
    const way = h.line.flow - from.line.flow
    const line: Line = {
      flow: from.line.flow + way / 2,
      gain: 0,
      flowVariance: from.line.flowVariance + (way * way) / 12,
      gainVariance: (DEAD_GAIN * h.line.gain) ** 2,
      covariance: 0,
    }
    return [
      { ...h, weight: h.weight * (1 - STALLS) },
      { ...h, line, acts: false, weight: h.weight * STALLS },
    ]
  })
}

/** The belief after a test here, mL/min: every line learns, and each explanation is weighed by how well it foretold. */
export function observeBelief(belief: Belief, flow: number, standard: number): Belief {
  const logs = belief.map((h) => Math.log(h.weight) + logLikelihood(h.line, flow, standard))
  const best = Math.max(...logs)
  const raw = logs.map((log) => Math.exp(log - best))
  const total = raw.reduce((sum, value) => sum + value, 0)
  return belief
    .map((h, i) => ({ ...h, line: observeLine(h.line, flow, standard), weight: (raw[i] ?? 0) / total }))
    .filter((h) => h.weight > NEGLIGIBLE)
}

const NEGLIGIBLE = 1e-9

/** Belief that the screw does not act, 0 to 1. */
export const deadShare = (belief: Belief): number =>
  belief.reduce((sum, h) => (h.acts ? sum : sum + h.weight), 0)

/** Mean and standard deviation of the gain, mL/min per turn, if the screw acts; null when that is given up. */
export function gainOf(belief: Belief): { readonly gain: number; readonly standard: number } | null {
  const acting = belief.filter((h) => h.acts)
  const total = acting.reduce((sum, h) => sum + h.weight, 0)
  if (!(total > 0)) return null
  const gain = acting.reduce((sum, h) => sum + h.weight * h.line.gain, 0) / total
  const variance =
    acting.reduce((sum, h) => sum + h.weight * (h.line.gainVariance + (h.line.gain - gain) ** 2), 0) / total
  return { gain, standard: Math.sqrt(variance) }
}
