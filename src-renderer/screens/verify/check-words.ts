import { feedsATank } from '#core/dose/feeds-a-tank'
import type { InstrumentKind, Product, Pump, Verification, VerificationMethod } from '#core/records/index'
import { METHOD_RULES } from '#core/verify/method-rules'
import { unitSymbol } from '#core/units/format'

export const METHOD_WORDS: Readonly<Record<VerificationMethod, string>> = {
  strip: 'Test strip',
  'chlorine-titration': 'Chlorine titration',
  'chlorine-drops': 'Chlorine drop count',
  'alkalinity-titration': 'Alkalinity titration',
  'alkalinity-drops': 'Alkalinity drop count',
  'hardness-titration': 'Hardness titration',
  'hardness-drops': 'Hardness drop count',
  conductivity: 'Conductivity',
}

export const PLACE_WORDS: Readonly<Record<Verification['where'], string>> = {
  'rinse-water': 'rinse water',
  ware: 'water on the ware',
  'wash-tank': 'wash tank',
}

/** What the boxes of a check are called, and what they are in. */
export interface CheckLabels {
  readonly reading: string
  readonly readingUnit: string
  /** null where it is always one */
  readonly step: string | null
  /** null where the reading is the strength already */
  readonly factor: { readonly label: string; readonly unit: string; readonly hint: string } | null
  readonly blank: { readonly label: string; readonly hint: string } | null
}

export function checkLabels(method: VerificationMethod): CheckLabels {
  const rule = METHOD_RULES[method]
  const unit = unitSymbol(rule.reads)
  const result = unitSymbol(rule.result)
  if (rule.by === 'itself')
    return {
      reading: 'Pad that matches',
      readingUnit: result,
      step: 'Distance to the next pad',
      factor: null,
      blank: null,
    }
  if (rule.by === 'slope')
    return {
      reading: 'Reading at 25 °C',
      readingUnit: unit,
      step: 'Smallest step shown',
      factor: {
        label: 'One g/L adds',
        unit,
        hint: 'from the product’s sheet, or from two titrated strengths',
      },
      blank: { label: 'Plain water', hint: 'the same meter in the water before any product' },
    }
  const drop = rule.reads === 'drops'
  return {
    reading: drop ? 'Drops to the colour change' : 'Titrant to the colour change',
    readingUnit: unit,
    step: drop ? null : 'Smallest mark',
    factor: {
      label: drop ? 'One drop stands for' : 'One mL stands for',
      unit: result,
      hint: 'from the leaflet of the kit',
    },
    blank: {
      label: 'Blank',
      hint: method.startsWith('alkalinity')
        ? 'the same test on the plain water: its own alkalinity is no detergent'
        : 'the same test on plain water, when the leaflet asks for it',
    },
  }
}

/** The instruments a check can be made with. */
export const toolOf = (method: VerificationMethod): InstrumentKind =>
  method === 'strip' ? 'strip' : method === 'conductivity' ? 'conductivity-meter' : 'titration-kit'

/** The checks that say something about a pump's product, likeliest first. A hardness check is always offered. */
export function methodsFor(
  pump: Pick<Pump, 'feeds' | 'role'>,
  product: Product | null,
): readonly VerificationMethod[] {
  const hardness = ['hardness-drops', 'hardness-titration'] as const
  if (feedsATank(pump)) return ['alkalinity-drops', 'alkalinity-titration', 'conductivity', ...hardness]
  const strength = product?.strength
  const chlorine =
    strength?.kind === 'trade-percent' ||
    (strength?.kind === 'weight-percent' && strength.active === 'available-chlorine')
  if (chlorine) return ['strip', 'chlorine-drops', 'chlorine-titration', ...hardness]
  if (strength?.kind === 'weight-percent' && ['quat', 'iodine'].includes(strength.active))
    return ['strip', ...hardness]
  return pump.role === 'sanitizer' ? ['strip', ...hardness] : hardness
}
