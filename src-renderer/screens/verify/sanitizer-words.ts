import type { SanitizerAdvice } from '#core/sanitize/sanitizer-advice'
import type { StrengthToday } from '#core/sanitize/strength-today'

export const OVERALL: Readonly<
  Record<SanitizerAdvice['overall'], { readonly tone: 'good' | 'warn' | 'bad'; readonly word: string }>
> = {
  meets: { tone: 'good', word: 'At every figure below' },
  misses: { tone: 'bad', word: 'Misses a figure below' },
  'cannot-tell': { tone: 'warn', word: 'Cannot be told yet' },
}

export const NOT_KNOWN: Readonly<Record<SanitizerAdvice['notKnown'][number], string>> = {
  label: 'what the label allows (enter it with the product)',
  pH: 'the pH of the rinse (the stricter column counts until it is read)',
  temperature: 'the temperature of the rinse',
  hardness: 'the hardness of the water',
}

/** Why the recorded strength of a product is not to be relied on. */
export function ageWords(strength: StrengthToday): string {
  switch (strength.warning) {
    case 'no-date':
      return 'It is not recorded when this product was delivered or measured. Chlorine weakens in store: titrate it, or enter the date.'
    case 'older-than-30-days':
      return `The recorded strength is ${strength.ageDays ?? 0} days old. Chlorine weakens in store: titrate it and enter what you find.`
    case 'past-shelf-life':
      return 'This container is past its shelf life. Use a fresh one.'
    case null:
      return ''
  }
}
