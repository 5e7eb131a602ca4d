import type { Day } from '../records'
import { change } from './changes'
import type { FlowTest, PumpHistory } from './types'

/** The tests of one tube, in stretches within which nothing but time changed the flow. */
export interface TubeTests {
  readonly from: Day | null
  readonly to: Day | null
  readonly stretches: readonly (readonly FlowTest[])[]
}

/** Cuts the life of a pump at every tube, and the life of a tube at every turn, change of product and jump. */
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
    } else if (event.kind !== 'test') tube.stretches.push([])
    else {
      const before = tube.stretches.at(-1)?.at(-1)
      if (before !== undefined && before.visitId !== event.visitId && change(before, event).jumped)
        tube.stretches.push([event])
      else tube.stretches.at(-1)?.push(event)
    }
  }
  return tubes.map((tube) => ({ ...tube, stretches: tube.stretches.filter((tests) => tests.length > 0) }))
}
