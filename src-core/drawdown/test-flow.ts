import { chain, ok, type Outcome } from '../outcome'
import type { Run, Test } from '../records'
import { daysBetween } from '../units/days'
import { readNumber } from '../units/read'
import { correctionFor, limitsFor, type Correction } from './correction'
import type { InstrumentLimits } from './instrument-limits'
import { observedFlow, seriesSpread } from './observed-flow'
import { rawRun, runSeconds, type RawRun } from './run-volume'
import { seriesQuality } from './series-quality'
import type { FlowResult, GoodRun, RunResult, SeriesState, TestConditions, VolumeDoubt } from './types'
import { pulsesPerMinute, volumeDoubt } from './volume-doubt'

/**
 * Works out one test: every run, the flow of the series in mL/min with its budget, and what the series says about
 * itself. V = k (start - end) for a draw-down, what was caught, or grams over density; q = 60 sum(V)/sum(t).
 *
 * Runs marked as excluded are worked out and not counted. A run not finished yet (a reading still missing) is left
 * out as long as another counts; a wrong one is a problem of the whole series until it is mended or excluded.
 *
 * Problems: those of a run, `no-runs`, `missing` instrument, bore, tube diameter, density or (single run) graduation.
 */
export function testFlow(test: Test, conditions: TestConditions): FlowResult {
  const correction = correctionFor(test, conditions)
  const limits = limitsFor(test, conditions)
  const capacity = limits.ok ? limits.value.capacity : null
  const worked = test.runs.map((run, i) => workRun(run, test, correction, capacity, `runs.${i}`))
  const counted = worked.filter((run) => run.result.excluded === null)
  const good = counted.flatMap((run) => run.good ?? [])
  const raw = counted.flatMap((run) => (run.good === null || run.raw === null ? [] : [run.raw]))
  const doubt = chain(correction, (c) => chain(limits, (l) => doubtOf(conditions, c, l, raw)))
  const flow = firstProblem(counted, good.length) ?? (doubt.ok ? observedFlow(good, doubt.value) : doubt)
  const pulses = pulsesPerMinute(conditions.rollers)
  const quality = seriesQuality({
    runs: good,
    primed: test.primed,
    graduations: limits.ok ? fewestMarks(raw, limits.value.graduation) : null,
    pulsesPerMinute: pulses.ok ? pulses.value : null,
    tubeOverdueDays: overdueDays(test, conditions),
  })
  const state = flow.ok && doubt.ok ? stateOf(good, doubt.value, test.instrumentId) : null
  return { runs: worked.map((run) => run.result), flow, quality, state }
}

interface WorkedRun {
  readonly result: RunResult
  readonly raw: RawRun | null
  readonly good: GoodRun | null
}

function workRun(
  run: Run,
  test: Test,
  correction: Outcome<Correction>,
  capacity: number | null,
  where: string,
): WorkedRun {
  const runId = run.id
  const seconds = runSeconds(run, where)
  const raw = rawRun(run, test.method, capacity, where)
  const volume = chain(raw, ({ amount }) => chain(correction, ({ factor }) => ok(amount * factor)))
  const flow = chain(volume, (v) => chain(seconds, (t) => ok((60 * v) / t)))
  const good =
    volume.ok && seconds.ok && flow.ok
      ? { runId, volume: volume.value, seconds: seconds.value, flow: flow.value }
      : null
  return {
    result: { runId, volume, seconds, flow, excluded: run.excluded },
    raw: raw.ok ? raw.value : null,
    good,
  }
}

function doubtOf(
  { rollers }: TestConditions,
  { tube, density }: Correction,
  limits: InstrumentLimits,
  raw: readonly RawRun[],
): Outcome<VolumeDoubt> {
  const readings = raw.flatMap((run) => run.readings)
  const readingsPerRun = Math.max(1, ...raw.map((run) => run.readings.length))
  return volumeDoubt({ limits, tube, density, readings, readingsPerRun, rollers })
}

function stateOf(
  good: readonly GoodRun[],
  doubt: VolumeDoubt,
  instrumentId: string | null,
): SeriesState | null {
  const spread = seriesSpread(good)
  if (spread === null || instrumentId === null) return null
  const { mean: flow, seconds, standardDeviation } = spread
  return { flow, runs: good.length, seconds, standardDeviation, instrumentId, doubt }
}

/** What stands in the way of the series: anything wrong, or a missing reading when no other run counts. */
function firstProblem(counted: readonly WorkedRun[], good: number): Outcome<never> | null {
  for (const { result } of counted)
    for (const part of [result.volume, result.seconds])
      if (!part.ok && !(part.problem.code === 'number-missing' && good > 0)) return part
  return null
}

const fewestMarks = (raw: readonly RawRun[], graduation: number | null): number | null =>
  graduation === null || raw.length === 0
    ? null
    : Math.floor(Math.min(...raw.map((run) => run.amount)) / graduation + 1e-9)

function overdueDays(test: Test, { tube }: TestConditions): number | null {
  const limit = readNumber(tube.replaceAfterDays, 'pump.tube.replaceAfterDays', { above: 0 })
  return tube.fittedOn === null || !limit.ok
    ? null
    : daysBetween(tube.fittedOn, test.at) - Math.floor(limit.value)
}
