import type { Water } from '#core/records/index'
import type { HardnessClass } from '#core/water/hardness'
import type { ScaleTendency } from '#core/water/saturation'

export const CLASS_WORDS: Readonly<Record<HardnessClass, string>> = {
  soft: 'soft',
  'moderately-hard': 'moderately hard',
  hard: 'hard',
  'very-hard': 'very hard',
}

export const TENDENCY_WORDS: Readonly<
  Record<ScaleTendency, { readonly tone: 'good' | 'warn'; readonly word: string; readonly means: string }>
> = {
  'leaves-scale': {
    tone: 'warn',
    word: 'Leaves scale when hot',
    means:
      'Heater, jets and glasses get a lime film. A softener, or more frequent descaling, is worth a talk.',
  },
  'near-balance': {
    tone: 'good',
    word: 'Near balance',
    means: 'It neither leaves much lime nor takes it up.',
  },
  'dissolves-scale': {
    tone: 'warn',
    word: 'Takes up lime and metal',
    means: 'It leaves no scale, but soft hot water is hard on glass and on copper.',
  },
}

/** What the scale index still needs, as one request; empty when nothing is missing. */
export function indexNeeds(water: Water, rinseKnown: boolean): string {
  const needs = [
    ...(water.pH === null ? ['pH'] : []),
    ...(water.alkalinity === null ? ['alkalinity'] : []),
    ...(water.calcium === null && water.hardness === null ? ['calcium or hardness'] : []),
    ...(water.solids === null && water.conductivity === null ? ['dissolved solids or conductivity'] : []),
    ...(rinseKnown || water.temperature !== null ? [] : ['the temperature']),
  ]
  const last = needs.at(-1)
  if (last === undefined) return ''
  const first = needs.slice(0, -1).join(', ')
  return `The scale index needs ${first === '' ? last : `${first} and ${last}`}. Enter what is known of the supply.`
}
