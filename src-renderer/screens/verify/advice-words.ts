import type { LimitAdvice } from '#core/sanitize/types'
import { formatNumber, unitSymbol } from '#core/units/format'
import type { DecimalSign } from '#core/units/parse'

export interface AdviceWords {
  readonly tone: 'good' | 'warn' | 'bad'
  readonly word: string
  readonly what: string
  readonly figure: string
  readonly reading: string
}

/** A comparison with a label, plate or code, in words that advise and never pass or fail anything. */
export function adviceWords(advice: LimitAdvice, sign: DecimalSign): AdviceWords {
  const { limit, figure, standing, close } = advice
  const unit = unitSymbol(figure.unit)
  const say = (value: number): string => trimmed(formatNumber(value, 4, sign))
  const word =
    standing === 'meets'
      ? limit.bound === 'min'
        ? 'at or above it'
        : 'at or below it'
      : limit.bound === 'min'
        ? 'below it'
        : 'above it'
  return {
    tone: standing === 'misses' ? 'bad' : close ? 'warn' : 'good',
    word: close ? `${word}, too near to be sure` : word,
    what: limit.what.charAt(0).toUpperCase() + limit.what.slice(1),
    figure: `${limit.bound === 'min' ? 'at least' : 'at most'} ${say(figure.value)} ${unit}`,
    reading: `${say(advice.reading)} ${unit}`,
  }
}

const trimmed = (text: string): string => (/[.,]/.test(text) ? text.replace(/[.,]?0+$/, '') : text)
