import { chain, ok, type Outcome } from '../outcome'
import { agedHypochlorite } from '../sanitize/hypochlorite-age'
import type { LimitAdvice } from '../sanitize/types'
import { unitSymbol } from '../units/format'
import type { DecimalSign } from '../units/parse'
import type { Working } from './types'
import { line, put } from './working'

const RELATION = { min: { meets: '≥', misses: '<' }, max: { meets: '≤', misses: '>' } } as const

/** The working of a comparison with a label, a data plate or a code. */
export function explainLimit(advice: LimitAdvice, sign: DecimalSign = 'point'): Working {
  const { limit, figure, reading } = advice
  const unit = unitSymbol(figure.unit)
  const least = limit.bound === 'min'
  return {
    title: `${capital(limit.what)}: ${least ? 'at least' : 'at most'} ${put(figure.value, sign)} ${unit}`,
    formula: least ? 'reading ≥ figure' : 'reading ≤ figure',
    inputs: [line('x', 'Reading', reading, unit), line('L', 'Figure', figure.value, unit)],
    substituted: `${put(reading, sign)} ${RELATION[limit.bound][advice.standing]} ${put(figure.value, sign)}`,
    result: line(
      'x − L',
      'Room to the figure',
      least ? reading - figure.value : figure.value - reading,
      unit,
    ),
    source: limit.source,
    assumptions: [
      ...(advice.close ? ['The reading may be off by more than its distance to the figure.'] : []),
      'Compared in the unit it was read in, where the text prints one: its figures are rounded to each other.',
      'Advice, not a verdict: label, data plate and local code come first.',
    ],
  }
}

/** The working of what may be left of an aged hypochlorite. Problems: those of `agedHypochlorite`. */
export const explainAged = (
  percent: number,
  days: number,
  celsius: number,
  sign: DecimalSign = 'point',
): Outcome<Working> =>
  chain(agedHypochlorite(percent, days, celsius), (left) => {
    const rate = days > 0 ? (1 / left.value - 1 / percent) / days : 0
    return ok({
      title: 'What may be left of the chlorine',
      formula: '1/C = 1/C0 + k × days',
      inputs: [
        line('C0', 'Strength on record', percent, '%'),
        line('k', `Rate at ${put(celsius, sign)} °C, per percent and day`, rate),
        line('days', 'Age', days, 'days'),
      ],
      substituted: `1/C = 1/${put(percent, sign)} + ${put(rate, sign)} × ${put(days, sign)}`,
      result: line('C', 'Estimated strength', left.value, '%'),
      source:
        'Fitted to one community table of bleach by storage temperature; a storage guide’s rules agree. Both secondary.',
      assumptions: [
        'An estimate: the loss may be half of this, or half as much again. Titrate before you rely on it.',
      ],
    })
  })

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
