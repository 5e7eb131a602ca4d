import type { Verdict } from '#core/dose/types'
import type { PumpState } from '#core/worksheet/types'

/** A state in two or three words, always beside its mark. */
export const STATE_WORDS: Record<PumpState, string> = {
  'proved-in': 'In window, proved',
  'in-not-proved': 'In window, not proved',
  'out-not-proved': 'Outside, not proved',
  'proved-out': 'Outside, proved',
  'not-tested': 'Not tested yet',
  'cannot-tell': 'Cannot tell yet',
}

/** The same, short enough for the side of a picture. */
export const VERDICT_SHORT: Record<Verdict | 'cannot-tell', string> = {
  'proved-in': 'in, proved',
  'in-not-proved': 'in, not proved',
  'out-not-proved': 'out, not proved',
  'proved-out': 'out',
  'cannot-tell': 'cannot tell',
}

export const STATE_TONE: Record<PumpState, 'good' | 'warn' | 'bad' | 'plain'> = {
  'proved-in': 'good',
  'in-not-proved': 'good',
  'out-not-proved': 'warn',
  'proved-out': 'bad',
  'not-tested': 'plain',
  'cannot-tell': 'warn',
}
