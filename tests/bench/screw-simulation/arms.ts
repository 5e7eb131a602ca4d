import { gainPrior, type GainSegment } from '#core/screw/gain-prior'
import type { Strategy } from './strategies'
import { advice } from './strategies'
import { VirtualPump, type Condition } from './virtual-pump'
import { EXTRA_RUNS, playVisit, type Rules, type VisitPlayed } from './visit'

/** The pumps the limits of the advice were judged on: seeds from here on. */
export const JUDGED_ON = 20_260_301
/** Pumps kept apart: nothing was ever chosen by them. What is reported and tested is played on these. */
export const HELD_OUT = 1_618_033_988

/** First visits to `count` pumps of one condition. Every strategy meets the same pumps under the same rules. */
export const firstVisits = (
  count: number,
  condition: Condition,
  strategy: Strategy,
  { rules = EXTRA_RUNS, seeds = HELD_OUT }: { readonly rules?: Rules; readonly seeds?: number } = {},
): readonly VisitPlayed[] =>
  Array.from({ length: count }, (_, i) =>
    playVisit(new VirtualPump(seeds + i, condition), strategy, { rules }),
  )

export interface Record {
  /** visits on record in which the screw was turned */
  readonly earlier: number
  /** lognormal spread of the next as-found */
  readonly drift: number
  /** the tube wears out before the last visit */
  readonly wornSince?: boolean
  readonly rules?: Rules
  readonly seeds?: number
}

/**
 * Visits to sound pumps with a record: the earlier visits are played with the advice, then the flow has gone elsewhere
 * with the screw untouched, and the last visit is counted. Pumps whose earlier visit needed no turn, or ended without
 * proof, have nothing on record and are passed over.
 */
export function visitsWithRecord(
  count: number,
  strategy: Strategy,
  { earlier, drift, wornSince = false, rules = EXTRA_RUNS, seeds = HELD_OUT }: Record,
): readonly VisitPlayed[] {
  const played: VisitPlayed[] = []
  for (let seed = seeds; played.length < count; seed++) {
    const pump = new VirtualPump(seed, 'sound')
    const segments = earlierVisits(pump, earlier, drift, rules)
    if (segments === null) continue
    const last = segments.at(-1)?.observations.at(-1)
    if (wornSince) pump.wearOut()
    const known = {
      prior: gainPrior(segments),
      playTakenUp: true,
      leftUntouched: last === undefined ? null : { flow: last.flow, expanded: last.expanded ?? 0 },
    }
    played.push(playVisit(pump, strategy, { known, rules }))
  }
  return played
}

function earlierVisits(
  pump: VirtualPump,
  count: number,
  drift: number,
  rules: Rules,
): readonly GainSegment[] | null {
  const segments: GainSegment[] = []
  for (let visit = 0; visit < count; visit++) {
    const playTakenUp = visit > 0
    const known = { prior: gainPrior(segments), playTakenUp, leftUntouched: null }
    const { provedIn, turns, observations } = playVisit(pump, advice, { known, rules })
    if (!provedIn || turns === 0) return null
    segments.push({ observations, tubeChangedAfter: false, playTakenUp })
    pump.driftAnew(drift)
  }
  return segments
}
