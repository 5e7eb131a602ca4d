import { fail, type Outcome } from '../outcome'
import type { Estimate } from '../statistics/estimate'
import { estimate } from '../statistics/make-estimate'
import { predictedFlow, RUN_REPEATABILITY, sharedLines, TIMER_STANDARD } from './predicted-flow'
import type { SeriesState, VolumeDoubt } from './types'

/** What could be done next. */
export interface NextTest {
  /** runs that would count in the end, those already made included when they are kept */
  readonly runs: number
  /** s of each */
  readonly seconds: number
  readonly doubt: VolumeDoubt
  /** mL/min the pump will give by then; absent: the flow it was found at */
  readonly flow?: number
}

/**
 * The flow estimate to expect if the next test found the same flow, or the one named, mL/min. Marked predicted.
 *
 * The scatter already seen is split into what instruments explain, which shrinks with the time of a run, and the rest,
 * which is the pump's own and does not. Degrees of freedom as the new series would have.
 *
 * Problems: `missing` graduation, `outside-valid-range`.
 */
export function forecastFlow(state: SeriesState, next: NextTest): Outcome<Estimate<'mL/min'>> {
  const q = next.flow ?? state.flow
  if (next.doubt.reading === null || state.doubt.reading === null)
    return fail({ code: 'missing', field: 'instrument.graduation', needed: 'graduation' })
  const ownShare = pumpRepeatability(state)
  if (next.runs < 2)
    return predictedFlow({ flow: q, seconds: next.seconds, runs: 1, repeatability: ownShare }, next.doubt)
  const noise = runNoise(q, next.seconds, next.doubt) * noiseSeen(state)
  const perRun = Math.hypot(q * ownShare, noise)
  const scatter = perRun / Math.sqrt(next.runs)
  return estimate(
    q,
    'mL/min',
    [
      { source: 'replicates', standard: scatter, degreesOfFreedom: next.runs - 1 },
      ...sharedLines(q, 60 / next.seconds, next.doubt),
    ],
    { predicted: true },
  )
}

/** The pump's own scatter as a fraction: what is seen beyond what the instruments explain. */
export function pumpRepeatability(state: SeriesState): number {
  const { flow: q, standardDeviation: s } = state
  if (s === null || !(q > 0)) return RUN_REPEATABILITY
  const own = Math.sqrt(Math.max(0, s * s - runNoise(q, state.seconds, state.doubt) ** 2)) / q
  return Number.isFinite(own) ? own : RUN_REPEATABILITY
}

/**
 * How much of the noise its instruments allow a series really showed, half to all of it: few runs can agree by luck,
 * so agreement is only half believed. Judgement.
 */
function noiseSeen({ flow, standardDeviation: s, seconds, doubt }: SeriesState): number {
  const allowed = runNoise(flow, seconds, doubt)
  return s === null || !(allowed > 0) ? 1 : Math.max(0.5, Math.min(1, s / allowed))
}

/** Standard uncertainty that readings, pulses and timer give one run, mL/min. */
function runNoise(q: number, seconds: number, doubt: VolumeDoubt): number {
  const reading = (60 * (doubt.reading ?? 0)) / seconds
  const pulse = doubt.pulsesPerMinute === null ? 0 : (60 * q) / doubt.pulsesPerMinute / Math.sqrt(6) / seconds
  return Math.hypot(reading, pulse, (q * TIMER_STANDARD) / seconds)
}
