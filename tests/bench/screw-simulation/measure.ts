import { observedFlow } from '#core/drawdown/observed-flow'
import { seriesQuality } from '#core/drawdown/series-quality'
import type { GoodRun, SeriesQuality } from '#core/drawdown/types'
import { observationOf } from '#core/screw/observation-of'
import type { ScrewObservation } from '#core/screw/types'

export interface Series {
  readonly observation: ScrewObservation
  readonly quality: SeriesQuality
}

/** What the program makes of runs of 60 s in a cylinder good for 0.5 %: its own flow, budget and judgement. */
export function series(flows: readonly number[], eighths: number): Series {
  const runs: readonly GoodRun[] = flows.map((flow, i) => ({
    runId: String(i),
    volume: flow,
    seconds: 60,
    flow,
  }))
  const mean = flows.reduce((sum, flow) => sum + flow, 0) / flows.length
  const flow = observedFlow(runs, {
    reading: 0,
    unresolved: 0,
    instrument: { source: 'cylinder-tolerance', standard: 0.005 * mean },
    factors: [],
    pulsesPerMinute: null,
  })
  if (!flow.ok) throw new Error(`a series of ${flows.join(', ')} has no flow: ${flow.problem.code}`)
  const quality = seriesQuality({
    runs,
    primed: true,
    graduations: null,
    pulsesPerMinute: null,
    tubeOverdueDays: null,
  })
  return { observation: observationOf(eighths, flow.value, flows.length), quality }
}
