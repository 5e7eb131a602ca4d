import { z } from 'zod'
import type { Instrument, Product, Settings } from '../records'
import { anyEntry, currency, day, entryOf, id, list, name, number, text } from './parts'

const strength = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('none') }).readonly(),
  z
    .strictObject({ kind: z.literal('trade-percent'), percent: number, measuredOn: day.nullable() })
    .readonly(),
  z
    .strictObject({
      kind: z.literal('weight-percent'),
      percent: number,
      active: z.enum(['available-chlorine', 'quat', 'iodine', 'surfactant', 'alkali', 'other']),
      measuredOn: day.nullable(),
    })
    .readonly(),
])

export const product: z.ZodType<Product> = z
  .strictObject({
    id,
    name,
    role: z.enum(['rinse-aid', 'detergent', 'sanitizer', 'delimer', 'other']),
    density: entryOf('density').nullable(),
    strength,
    hazards: list(
      z.enum(['corrosive', 'alkaline', 'acid', 'chlorine', 'ammonia-or-quat', 'iodine', 'irritant']),
    ),
    containerSize: entryOf('volume').nullable(),
    prices: list(
      z.strictObject({ from: day, currency, price: number, containerSize: entryOf('volume') }).readonly(),
    ),
    labelLimits: z
      .strictObject({
        basis: z.enum(['mg-per-L-active', 'ppm-vv', 'g-per-L-tank']),
        low: number.nullable(),
        high: number.nullable(),
      })
      .readonly()
      .nullable(),
    safetySheet: text,
    deliveredOn: day.nullable(),
    shelfLifeDays: number.nullable(),
    leadTimeDays: number.nullable(),
  })
  .readonly()

export const instrument: z.ZodType<Instrument> = z
  .strictObject({
    id,
    name,
    kind: z.enum([
      'cylinder',
      'cup',
      'scale',
      'timer',
      'strip',
      'titration-kit',
      'thermometer',
      'pressure-gauge',
      'conductivity-meter',
      'pH-meter',
    ]),
    capacity: anyEntry.nullable(),
    graduation: anyEntry.nullable(),
    tolerance: anyEntry.nullable(),
    bore: entryOf('length').nullable(),
    checkedOn: day.nullable(),
  })
  .readonly()

export const settings: z.ZodType<Settings> = z
  .strictObject({
    repName: name,
    firmName: name,
    decimalSign: z.enum(['point', 'comma']),
    theme: z.enum(['system', 'light', 'dark']),
    sheet: z.enum(['A4', 'Letter']),
    currency,
    units: z.enum(['metric', 'us', 'imperial']),
    protocol: z.strictObject({ runs: number, seconds: number }).readonly(),
    cautionTexts: list(z.strictObject({ caution: name, text }).readonly()),
    codeLimits: list(z.strictObject({ limit: name, value: number, source: text }).readonly()),
    glassWeights: list(z.strictObject({ key: name, value: number }).readonly()),
    deliveryColumns: list(z.strictObject({ field: name, column: name }).readonly()),
    serviceLevel: number,
  })
  .readonly()
