import type { Entry, NumberText, Product } from '../records'
import { readNumber } from '../units/read'
import { chlorineRow } from './chlorine-row'
import { adviceOn, compareWithLimit } from './compare'
import { halfWidthOf } from './device-accuracy'
import { labelLimits } from './label-limits'
import type { CodeLimits, Limit, LimitAdvice } from './types'

export type SanitizerSubstance = 'available-chlorine' | 'iodine' | 'quat'

export interface SanitizerReading {
  readonly substance: SanitizerSubstance
  /** mg/L active, with the ends of its 95 % interval */
  readonly strength: { readonly value: number; readonly low: number; readonly high: number }
  readonly pH: NumberText | null
  readonly temperature: Entry | null
  readonly hardness: Entry | null
  readonly label: Product['labelLimits']
  /** its strength puts a label in ppm v/v into mg/L active; absent: such a label counts as not known */
  readonly product?: Product | null
}

export interface SanitizerAdvice {
  readonly substance: SanitizerSubstance
  /** the label first, then the code */
  readonly comparisons: readonly LimitAdvice[]
  /** what was not measured or recorded, so that nothing could be said about it */
  readonly notKnown: readonly ('label' | 'pH' | 'temperature' | 'hardness')[]
  /** one figure is missed; none is, none is near; none is missed, but one is near or something is not known */
  readonly overall: 'misses' | 'meets' | 'cannot-tell'
  /** the step of the chlorine table depends on which end of the interval is true */
  readonly stepUnsure: boolean
  /** outside what the label allows: the ware must not be served on before a strip confirms */
  readonly outsideLabel: boolean
}

/**
 * What label and code say about a sanitizing rinse: strength, water temperature, pH, hardness. Advice with its source,
 * never a verdict; the label governs, then local code. An unknown pH takes the chlorine table's hotter column.
 * A strength that is no number counts as nothing there.
 *
 * Source: Food Code 4-501.114 (A) to (C) and 40 CFR 180.940, each as replaced in the settings.
 */
export function sanitizerAdvice(reading: SanitizerReading, limits: CodeLimits): SanitizerAdvice {
  const { strength, substance } = reading
  const value = Number.isFinite(strength.value) ? strength.value : 0
  const width = Math.max(
    0,
    ...[strength.high - value, value - strength.low].filter((each) => Number.isFinite(each)),
  )
  const pH = reading.pH === null ? null : readNumber(reading.pH, 'pH', { low: 0, high: 14 })
  const measuredPH = pH !== null && pH.ok ? pH.value : null
  const onLabel = labelLimits(reading.label, reading.product).map((limit) =>
    adviceOn(limit, limit.figures[0], value, width),
  )
  const row = substance === 'available-chlorine' ? chlorineRow(value, measuredPH, limits) : null
  const rules = rulesFor(substance, limits, row?.temperature ?? null, onLabel.length > 0)
  const comparisons: LimitAdvice[] = [
    ...onLabel,
    ...rules.strength.map((limit) => adviceOn(limit, limit.figures[0], value, width)),
    ...(rules.pH === null || measuredPH === null
      ? []
      : [adviceOn(rules.pH, rules.pH.figures[0], measuredPH, halfWidthOf('pH'))]),
    ...entryAdvice(reading.temperature, rules.temperature),
    ...entryAdvice(reading.hardness, rules.hardness),
  ]
  const notKnown = missing(reading, rules, onLabel.length > 0, measuredPH !== null)
  const ends = [strength.low, strength.high].map((end) => chlorineRow(end, measuredPH, limits)?.step)
  const stepUnsure = row !== null && ends.some((step) => step !== row.step)
  const misses = comparisons.some((each) => each.standing === 'misses')
  const open = stepUnsure || notKnown.length > 0 || comparisons.some((each) => each.close)
  return {
    substance,
    comparisons,
    notKnown,
    overall: misses ? 'misses' : open ? 'cannot-tell' : 'meets',
    stepUnsure,
    outsideLabel: onLabel.some((each) => each.standing === 'misses'),
  }
}

interface Rules {
  readonly strength: readonly Limit[]
  readonly temperature: Limit | null
  readonly pH: Limit | null
  readonly hardness: Limit | null
}

/** The code leaves the strength of quat to its label; the secondary range stands in only where no label is recorded. */
function rulesFor(
  substance: SanitizerSubstance,
  limits: CodeLimits,
  chlorineWater: Limit | null,
  hasLabel: boolean,
): Rules {
  switch (substance) {
    case 'available-chlorine':
      return {
        strength: [limits['chlorine-low-step'], limits['chlorine-max']],
        temperature: chlorineWater,
        pH: limits['chlorine-pH-max'],
        hardness: null,
      }
    case 'iodine':
      return {
        strength: [limits['iodine-min'], limits['iodine-max']],
        temperature: limits['iodine-temperature'],
        pH: limits['iodine-pH-max'],
        hardness: null,
      }
    case 'quat':
      return {
        strength: hasLabel ? [] : [limits['quat-min'], limits['quat-max']],
        temperature: limits['quat-temperature'],
        pH: null,
        hardness: limits['quat-hardness-max'],
      }
  }
}

function entryAdvice(entry: Entry | null, limit: Limit | null): readonly LimitAdvice[] {
  if (entry === null || limit === null) return []
  const advice = compareWithLimit(entry, limit, 'reading', halfWidthOf(entry.unit))
  return advice.ok ? [advice.value] : []
}

function missing(
  reading: SanitizerReading,
  rules: Rules,
  hasLabel: boolean,
  hasPH: boolean,
): SanitizerAdvice['notKnown'] {
  const lacking: SanitizerAdvice['notKnown'][number][] = []
  if (!hasLabel) lacking.push('label')
  if (rules.pH !== null && !hasPH) lacking.push('pH')
  if (rules.temperature !== null && entryAdvice(reading.temperature, rules.temperature).length === 0)
    lacking.push('temperature')
  if (rules.hardness !== null && entryAdvice(reading.hardness, rules.hardness).length === 0)
    lacking.push('hardness')
  return lacking
}
