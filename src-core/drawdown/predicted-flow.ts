import type { Outcome } from '../outcome'
import type { Estimate } from '../statistics/estimate'
import { estimate, type DoubtLine } from '../statistics/make-estimate'
import type { VolumeDoubt } from './types'

/**
 * Hand start and stop of a stopwatch, s: the difference of two reactions is about N(0, 0.10 s). Published for
 * hand-timed calibrations; NIST Special Publication 960-12 treats the same two reactions.
 */
export const TIMER_STANDARD = 0.1

/** How well a sound pump repeats itself, as a fraction, before its own runs have shown it. Judgement. */
export const RUN_REPEATABILITY = 0.005

/** A test still to be made. */
export interface PlannedTest {
  /** mL/min expected */
  readonly flow: number
  /** s of one run */
  readonly seconds: number
  readonly runs: number
  /** fraction; `RUN_REPEATABILITY` unless the pump is known better */
  readonly repeatability?: number
}

/**
 * What a test can be expected to know, before any scatter was seen: a forecast, marked as such.
 *
 * Per run (and so divided by the root of the number of runs): the readings; the roller pulse
 * vp = q/(rpm x rollers), with random start and stop phase, so vp/sqrt(6); the timer; the pump's repeatability.
 * Shared by all runs: cylinder or scale tolerance, tube factor, density. Flow in mL/min.
 * Source: JCGM 100:2008 (GUM) 4.3, 5.1; pulse term derived from the difference of two uniform phases.
 *
 * Problems: `missing` graduation; `outside-valid-range` for seconds or runs not above zero.
 */
export function predictedFlow(test: PlannedTest, doubt: VolumeDoubt): Outcome<Estimate<'mL/min'>> {
  if (doubt.reading === null)
    return { ok: false, problem: { code: 'missing', field: 'instrument.graduation', needed: 'graduation' } }
  const { flow: q, seconds: t, runs: n } = test
  const perMinute = 60 / t
  const ofMean = 1 / Math.sqrt(n)
  const pulse = doubt.pulsesPerMinute === null ? 0 : q / doubt.pulsesPerMinute / Math.sqrt(6)
  const lines: DoubtLine[] = [
    { source: 'reading', standard: perMinute * doubt.reading * ofMean },
    { source: 'roller-pulse', standard: perMinute * pulse * ofMean },
    { source: 'timer', standard: (q * TIMER_STANDARD * ofMean) / t },
    { source: 'run-repeatability', standard: q * (test.repeatability ?? RUN_REPEATABILITY) * ofMean },
    ...sharedLines(q, perMinute, doubt),
  ]
  return estimate(q, 'mL/min', lines, { predicted: true })
}

/** What no number of runs takes away. `perMinute` is 60 over the seconds of a run. */
export const sharedLines = (q: number, perMinute: number, doubt: VolumeDoubt): readonly DoubtLine[] => [
  { source: doubt.instrument.source, standard: perMinute * doubt.instrument.standard },
  ...doubt.factors.map((factor) => ({
    source: factor.source,
    standard: q * factor.relative,
    ...(factor.sign === undefined ? {} : { sign: factor.sign }),
  })),
]
