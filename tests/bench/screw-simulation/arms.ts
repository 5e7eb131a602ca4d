import { gainPrior, type GainSegment } from '#core/screw/gain-prior'
import type { Strategy } from './strategies'
import { advice } from './strategies'
import { VirtualPump, type Condition } from './virtual-pump'
import { playVisit, type VisitPlayed } from './visit'

const FIRST_SEED = 20_260_301

/** First visits to `count` pumps of one condition. Every strategy meets the same pumps. */
export const firstVisits = (
  count: number,
  condition: Condition,
  strategy: Strategy,
): readonly VisitPlayed[] =>
  Array.from({ length: count }, (_, i) => playVisit(new VirtualPump(FIRST_SEED + i, condition), strategy))

export interface Record {
  /** visits on record in which the screw was turned */
  readonly earlier: number
  /** lognormal spread of the next as-found */
  readonly drift: number
  /** the tube wears out before the last visit */
  readonly wornSince?: boolean
}

/**
 * Visits to sound pumps with a record: the earlier visits are played with the advice, then the flow has gone elsewhere
 * with the screw untouched, and the last visit is counted. Pumps whose earlier visit needed no turn, or ended without
 * proof, have nothing on record and are passed over.
 */
export function visitsWithRecord(
  count: number,
  strategy: Strategy,
  { earlier, drift, wornSince = false }: Record,
): readonly VisitPlayed[] {
  const played: VisitPlayed[] = []
  for (let seed = FIRST_SEED; played.length < count; seed++) {
    const pump = new VirtualPump(seed, 'sound')
    const segments = earlierVisits(pump, earlier, drift)
    if (segments === null) continue
    const last = segments.at(-1)?.observations.at(-1)
    if (wornSince) pump.wearOut()
    const known = {
      prior: gainPrior(segments),
      playTakenUp: true,
      leftUntouched: last === undefined ? null : { flow: last.flow, expanded: last.expanded ?? 0 },
    }
    played.push(playVisit(pump, strategy, known))
  }
  return played
}

function earlierVisits(pump: VirtualPump, count: number, drift: number): readonly GainSegment[] | null {
  const segments: GainSegment[] = []
  for (let visit = 0; visit < count; visit++) {
    const playTakenUp = visit > 0
    const known = { prior: gainPrior(segments), playTakenUp, leftUntouched: null }
    const { provedIn, turns, observations } = playVisit(pump, advice, known)
    if (!provedIn || turns === 0) return null
    segments.push({ observations, tubeChangedAfter: false, playTakenUp })
    pump.driftAnew(drift)
  }
  return segments
}
