import type { Belief } from './belief'
import { BACK_OFF, FARTHEST, PASSING_RISK, PASSING_RISK_CAREFUL } from './limits'
import { outlook, type Aim, type Outlook } from './outlook'
import type { ScrewStops } from './types'

export interface Move {
  /** net eighths, clockwise positive */
  readonly eighths: number
  readonly outlook: Outlook
  /** what kept a longer move from being looked at */
  readonly cappedBy: 'risk' | 'stop' | null
}

export interface Course {
  readonly direction: 1 | -1
  readonly target: number
  /** net eighths since the witness mark, today */
  readonly at: number
  readonly stops: ScrewStops
  readonly careful: boolean
}

/**
 * The move in whole eighths that most likely settles the matter, among those that go towards the target, stay off the
 * end stops and keep the chance of passing the far edge of the window within the risk allowed. Where none in reach can
 * settle it, the one that comes nearest. Null when the stop is here already.
 */
export function chooseMove(belief: Belief, aim: Aim, course: Course): Move | null {
  const free = freeEighths(course)
  const risk = course.careful ? PASSING_RISK_CAREFUL : PASSING_RISK
  let best: { readonly eighths: number; readonly outlook: Outlook; readonly worth: number } | null = null
  let cappedBy: Move['cappedBy'] = free < FARTHEST ? 'stop' : null
  for (let size = 1; size <= Math.min(free, FARTHEST); size++) {
    const eighths = size * course.direction
    const seen = outlook(belief, eighths / 8, aim)
    if (size > 1 && seen.passes > risk) {
      cappedBy = 'risk'
      break
    }
    const worth = seen.settles - (0.01 * Math.abs(seen.flow - course.target)) / course.target
    if (best === null || worth > best.worth) best = { eighths, outlook: seen, worth }
  }
  return best === null ? null : { eighths: best.eighths, outlook: best.outlook, cappedBy }
}

/** Eighths left in the direction of the move; downward the way back up must fit above the stop. */
export function freeEighths({ direction, at, stops }: Course): number {
  if (direction === 1) return stops.up === null ? FARTHEST : Math.max(0, Math.floor(stops.up - at))
  return stops.down === null ? FARTHEST : Math.max(0, Math.floor(at - stops.down) - BACK_OFF)
}
