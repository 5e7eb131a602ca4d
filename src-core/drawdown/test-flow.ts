import { once } from '../once'
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
  const runs: RunResult[] = []
  const counted: RunResult[] = []
  const good: GoodRun[] = []
  const raw: RawRun[] = []
  for (const [i, run] of test.runs.entries()) {
    const worked = workRun(run, test, correction, capacity, `runs.${i}`)
    runs.push(worked.result)
    if (run.excluded !== null) continue
    counted.push(worked.result)
    if (worked.good === null || worked.raw === null) continue
    good.push(worked.good)
    raw.push(worked.raw)
  }
  const doubt = chain(correction, (c) => chain(limits, (l) => doubtOf(conditions, c, l, raw)))
  const flow = firstProblem(counted, good.length) ?? (doubt.ok ? observedFlow(good, doubt.value) : doubt)
  const quality = once(() => {
    const pulses = pulsesPerMinute(conditions.rollers)
    return seriesQuality({
      runs: good,
      primed: test.primed,
      graduations: limits.ok ? fewestMarks(raw, limits.value.graduation) : null,
      pulsesPerMinute: pulses.ok ? pulses.value : null,
      tubeOverdueDays: overdueDays(test, conditions),
    })
  })
  return {
    runs,
    flow,
    get quality() {
      return quality()
    },
    state: flow.ok && doubt.ok ? stateOf(good, doubt.value, test.instrumentId) : null,
  }
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
  const { id: runId, excluded } = run
  const seconds = runSeconds(run, where)
  const raw = rawRun(run, test.method, capacity, where)
  const volume = !raw.ok ? raw : !correction.ok ? correction : ok(raw.value.amount * correction.value.factor)
  const flow = !volume.ok ? volume : !seconds.ok ? seconds : ok((60 * volume.value) / seconds.value)
  const good =
    volume.ok && seconds.ok && flow.ok
      ? { runId, volume: volume.value, seconds: seconds.value, flow: flow.value }
      : null
  return { result: { runId, volume, seconds, flow, excluded }, raw: raw.ok ? raw.value : null, good }
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
function firstProblem(counted: readonly RunResult[], good: number): Outcome<never> | null {
  if (counted.length === good) return null
  for (const { volume, seconds } of counted)
    for (const part of [volume, seconds])
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
