import { gainOf } from './belief'
import { movesMade } from './diagnose'
import { learn } from './learn'
import type { GainPrior, ScrewObservation } from './types'

/** Tests of one visit on one tube, as-found first, and whether the tube was changed after them. */
export interface GainSegment {
  readonly observations: readonly ScrewObservation[]
  readonly tubeChangedAfter: boolean
  readonly playTakenUp?: boolean
}

/** A gain does not keep to the percent from visit to visit: standard deviation of its relative change. */
const BETWEEN_VISITS = 0.02
/** One pump says this little about another of its kind; two or more say it themselves. */
const ALONE = 0.5
const AT_LEAST = 0.2
const NO_PRIOR: GainPrior = { gain: 0, standard: 0, from: 'none' }

/**
 * What is believed of the gain before this visit, mL/min per turn: from the pump's own earlier visits, oldest first;
 * else from other pumps of the same kind, each with its own; else nothing. Visits without a turn teach nothing. After a
 * tube change the gain is kept with its uncertainty doubled, the level forgotten.
 */
export function gainPrior(
  own: readonly GainSegment[],
  sameKind: readonly (readonly GainSegment[])[] = [],
): GainPrior {
  const known = learnGain(own)
  if (known !== null) return { ...known, from: 'earlier-visits' }
  const others = sameKind.flatMap((segments) => learnGain(segments) ?? [])
  const mean = others.reduce((sum, other) => sum + other.gain, 0) / others.length
  if (!(mean > 0)) return NO_PRIOR
  const within = others.reduce((sum, other) => sum + other.standard ** 2, 0) / others.length
  const between =
    others.length < 2
      ? (ALONE * mean) ** 2
      : (others.reduce((sum, other) => sum + (other.gain - mean) ** 2, 0) / (others.length - 1)) *
        (1 + 1 / others.length)
  const standard = Math.max(AT_LEAST * mean, Math.sqrt(within + between))
  return { gain: mean, standard, from: 'same-kind' }
}

interface KnownGain {
  readonly gain: number
  readonly standard: number
}

/** One visit's posterior is the next visit's prior. Null while no turn was ever followed by a test. */
function learnGain(segments: readonly GainSegment[]): KnownGain | null {
  let known: KnownGain | null = null
  for (const { observations, tubeChangedAfter, playTakenUp } of segments) {
    const scale = observations.at(-1)?.flow ?? 0
    if (movesMade(observations) > 0 && scale > 0) {
      const prior: GainPrior | null = known === null ? null : { ...known, from: 'earlier-visits' }
      const belief = learn(observations, scale, prior, playTakenUp ?? false)
      const seen = belief === null ? null : gainOf(belief)
      if (seen !== null && seen.gain > 0) known = seen
    }
    if (known !== null)
      known = {
        gain: known.gain,
        standard: Math.hypot(known.standard, BETWEEN_VISITS * known.gain) * (tubeChangedAfter ? 2 : 1),
      }
  }
  return known
}
