import type { Id, Pump, Step } from '../records'
import { readNumber } from '../units/read'
import type { ScrewStops } from './types'

/** Where the screw was at each test of a visit. Eighths since the witness mark drawn at the start, clockwise positive. */
export interface Positions {
  readonly byTest: ReadonlyMap<Id, number>
  readonly now: number
  /** moves recorded */
  readonly moves: number
  /** tests of each tube, in order; a tube fitted in the visit begins a new list */
  readonly tubes: readonly (readonly Id[])[]
  readonly stops: ScrewStops
}

/**
 * Adds up the turns of a visit. Ends of travel come from the pump's record, free eighths counted from the witness mark,
 * and from stops met in this visit, which count for more. An unreadable number of free eighths is as good as none.
 */
export function positions(
  steps: readonly Step[],
  known: Pump['screwStops'] = { up: null, down: null },
): Positions {
  const byTest = new Map<Id, number>()
  const tubes: Id[][] = [[]]
  let now = 0
  let moves = 0
  let up = free(known.up, 'pump.screwStops.up')
  let down = negative(free(known.down, 'pump.screwStops.down'))
  for (const step of steps) {
    if (step.kind === 'turn') {
      now += step.eighths
      moves += step.eighths === 0 ? 0 : 1
    } else if (step.kind === 'end-stop') {
      if (step.direction === 'up') up = now
      else down = now
    } else if (step.kind === 'tube-fitted') tubes.push([])
    else if (step.kind === 'test') {
      byTest.set(step.id, now)
      tubes.at(-1)?.push(step.id)
    }
  }
  return {
    byTest,
    now,
    moves,
    tubes: tubes.filter((tests, i) => tests.length > 0 || i > 0),
    stops: { up, down },
  }
}

const free = (text: string | null, field: string): number | null => {
  const eighths = readNumber(text, field, { low: 0, high: 1e4 })
  return eighths.ok ? eighths.value : null
}

const negative = (value: number | null): number | null => (value === null ? null : 0 - value)
