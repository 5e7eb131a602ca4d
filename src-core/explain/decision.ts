import type { Decision, Verdict } from '../dose/types'
import { unitSymbol } from '../units/format'
import type { DecimalSign } from '../units/parse'
import type { Working } from './types'
import { line, put } from './working'

/** The working of a decision: the interval held against the window. */
export function explainDecision(decision: Decision, sign: DecimalSign = 'point'): Working {
  const { value, low, target, high, verdict } = decision
  const unit = unitSymbol(value.unit)
  const nearest = Math.abs(value.value - low) <= Math.abs(high - value.value) ? low : high
  const inside = value.value >= low && value.value <= high
  const room = Math.abs(value.value - nearest)
  const U = value.expanded
  const against = inside ? (room >= U ? '≥' : '<') : room > U ? '>' : '≤'
  return {
    title: 'Is it in the window?',
    formula: inside
      ? 'proved in when room to the nearest edge ≥ U'
      : 'proved out when distance to the nearest edge > U',
    inputs: [
      line('c', 'What was found', value.value, unit),
      line('U', 'Uncertainty, 95 %', value.expanded, unit),
      line('low', 'Low edge of the window', low, unit),
      line('target', 'Target', target, unit),
      line('high', 'High edge of the window', high, unit),
    ],
    substituted: `|${put(value.value, sign)} − ${put(nearest, sign)}| = ${put(room, sign)} ${against} ${put(U, sign)}: ${WORDS[verdict]}`,
    result: line(inside ? 'room' : 'distance', 'To the nearest edge', room, unit),
    source:
      'Guarded acceptance with a guard band as wide as the expanded uncertainty (JCGM 106:2012; from memory).',
    assumptions: value.predicted
      ? ['One run shows no scatter: its uncertainty is a forecast and proves nothing.']
      : [],
  }
}

const WORDS: Readonly<Record<Verdict, string>> = {
  'proved-in': 'in, proved',
  'in-not-proved': 'in, not yet proved',
  'out-not-proved': 'out, not yet proved',
  'proved-out': 'out, proved',
}
