import { oncePer } from '../once'
import { fail, type Outcome } from '../outcome'
import type { Estimate } from '../statistics/estimate'
import { estimate } from '../statistics/make-estimate'
import { compensatedSumOf } from '../statistics/sum'
import { predictedFlow, sharedLines } from './predicted-flow'
import type { GoodRun, VolumeDoubt } from './types'

export interface SeriesSpread {
  /** mL/min: all the volume over all the time */
  readonly mean: number
  /** mL/min, of one run of average length; null for a single run */
  readonly standardDeviation: number | null
  /** s, of an average run */
  readonly seconds: number
}

/**
 * Mean flow and scatter of runs that may differ in length, mL/min.
 *
 * q = 60 sum(V)/sum(t), so that a run counts by its length; scatter
 * s^2 = sum((t/tm)(q_i - q)^2)/(n - 1). For equal runs these are the ordinary mean and standard deviation. Best when
 * the variance of a volume grows with the time it took, which lies between constant reading errors and a constant
 * percentage. Source: the ratio estimator (Cochran, Sampling Techniques, chapter 6; from memory).
 */
export const seriesSpread = oncePer((runs: readonly GoodRun[]): SeriesSpread | null => {
  const n = runs.length
  const total = compensatedSumOf(runs, (run) => run.seconds)
  if (n === 0 || !(total > 0)) return null
  const mean = (60 * compensatedSumOf(runs, (run) => run.volume)) / total
  const seconds = total / n
  const squares = compensatedSumOf(runs, (run) => (run.seconds / seconds) * (run.flow - mean) ** 2)
  return { mean, standardDeviation: n > 1 ? Math.sqrt(squares / (n - 1)) : null, seconds }
})

/**
 * Flow of a series with its uncertainty budget, mL/min.
 *
 * Two or more runs: the scatter they show, which already holds reading, timer, pulses and the pump itself, plus only
 * what all runs share. Readings too coarse to show any scatter share their rounding, which then counts as `reading`.
 * One run: the forecast of `predictedFlow`, marked predicted. Source: JCGM 100:2008 (GUM) 4.2, 4.3, F.2.2.1, G.4.
 *
 * Problems: `no-runs`; `missing` graduation for a single run; `outside-valid-range`.
 */
export function observedFlow(runs: readonly GoodRun[], doubt: VolumeDoubt): Outcome<Estimate<'mL/min'>> {
  const spread = seriesSpread(runs)
  if (spread === null) return fail({ code: 'no-runs' })
  const { mean: q, standardDeviation: s, seconds } = spread
  if (s === null) return predictedFlow({ flow: q, seconds, runs: 1 }, doubt)
  const perMinute = 60 / seconds
  const unresolved = Math.sqrt(Math.max(0, (perMinute * doubt.unresolved) ** 2 - s * s))
  return estimate(q, 'mL/min', [
    { source: 'replicates', standard: s / Math.sqrt(runs.length), degreesOfFreedom: runs.length - 1 },
    { source: 'reading', standard: unresolved },
    ...sharedLines(q, perMinute, doubt),
  ])
}
