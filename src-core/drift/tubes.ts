import type { Day } from '../records'
import type { FlowTest, PumpHistory } from './types'

/** The tests of one tube, in stretches within which nothing but time changed the flow. */
export interface TubeTests {
  readonly from: Day | null
  readonly to: Day | null
  readonly stretches: readonly (readonly FlowTest[])[]
}

/** Cuts the life of a pump at every tube, and the life of a tube at every turn and change of product. */
export function tubesOf(history: PumpHistory, fittedBeforeRecord: Day | null = null): readonly TubeTests[] {
  const tubes: { from: Day | null; to: Day | null; stretches: FlowTest[][] }[] = [
    { from: fittedBeforeRecord, to: null, stretches: [[]] },
  ]
  for (const event of history) {
    const tube = tubes.at(-1)
    if (tube === undefined) continue
    if (event.kind === 'tube') {
      tube.to = event.day
      tubes.push({ from: event.day, to: null, stretches: [[]] })
    } else if (event.kind === 'test') tube.stretches.at(-1)?.push(event)
    else tube.stretches.push([])
  }
  return tubes.map((tube) => ({ ...tube, stretches: tube.stretches.filter((tests) => tests.length > 0) }))
}
