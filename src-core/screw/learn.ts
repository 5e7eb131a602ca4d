import { moveBelief, observeBelief, stallBelief, startBelief, type Belief } from './belief'
import { NO_FLOW, USUAL_SCATTER } from './limits'
import type { GainPrior, ScrewObservation } from './types'

const RUNS = 3

/**
 * Scatter of one run as a fraction of the flow, pooled over all tests at this pump and a little experience. Three runs
 * alone judge their scatter so poorly that by luck they may show none.
 * Source of the pooling: JCGM 100:2008 (GUM) 4.2.4.
 */
export function pooledScatter(observations: readonly ScrewObservation[]): number {
  let weight: number = USUAL_SCATTER.weight
  let sum = weight * USUAL_SCATTER.fraction ** 2
  for (const o of observations) {
    const runs = o.runs ?? RUNS
    if (runs < 2 || !(o.flow > 0)) continue
    weight += runs - 1
    sum += (runs - 1) * runs * ((o.scatter ?? o.standard) / o.flow) ** 2
  }
  return Math.sqrt(sum / weight)
}

/**
 * What the tests of one visit say about a screw. `scale`: the target flow, or any flow of that size, mL/min. What all
 * tests share, such as the cylinder, moves them together and says nothing about the screw: only scatter counts here.
 * Null without a test.
 */
export function learn(
  observations: readonly ScrewObservation[],
  scale: number,
  prior: GainPrior | null,
  playTakenUp: boolean,
): Belief | null {
  const [first, ...later] = observations
  if (first === undefined) return null
  const fraction = pooledScatter(observations)
  let belief = startBelief(scale, first.flow, meanScatter(first, fraction, scale), prior, playTakenUp)
  let at = first.eighths
  for (const o of later) {
    const turns = (o.eighths - at) / 8
    const moved = stallBelief(belief, moveBelief(belief, turns), turns)
    belief = observeBelief(moved, o.flow, meanScatter(o, fraction, scale))
    at = o.eighths
  }
  return belief
}

/** Standard uncertainty of the mean of a test from its scatter, mL/min. */
const meanScatter = (o: ScrewObservation, fraction: number, scale: number): number =>
  (fraction * Math.max(o.flow, NO_FLOW * scale)) / Math.sqrt(Math.max(1, o.runs ?? RUNS))
