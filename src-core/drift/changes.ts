import { enScore } from '../statistics/en-score'
import { daysBetween } from '../units/days'
import { JUMP } from './limits'
import type { Break, Change, FlowTest, PumpHistory } from './types'

/**
 * From each visit's last trusted test to the next visit's first: what time did, since nobody turned the screw between.
 * A break on record between them is named.
 */
export function changesOf(history: PumpHistory): readonly Change[] {
  const changes: Change[] = []
  let last: FlowTest | null = null
  let across: Change['across'] = 'nothing'
  for (const event of history) {
    if (event.kind !== 'test') across = graver(across, event.kind)
    else {
      if (last !== null && last.visitId !== event.visitId) changes.push(change(last, event, across))
      last = event
      across = 'nothing'
    }
  }
  return changes
}

/** What happened from one test to another. */
export function change(from: FlowTest, to: FlowTest, across: Change['across'] = 'nothing'): Change {
  const score = enScore(from.flow, to.flow)
  const relative = to.flow.value / from.flow.value - 1
  const differs = score === null || score > 1
  return {
    from,
    to,
    days: daysBetween(from.day, to.day),
    relative,
    score,
    differs,
    jumped: across === 'nothing' && differs && relative > JUMP,
    across,
  }
}

const ORDER = ['nothing', 'turn', 'product', 'tube'] as const

const graver = (a: Change['across'], b: Break['kind']): Change['across'] =>
  ORDER.indexOf(b) > ORDER.indexOf(a) ? b : a
