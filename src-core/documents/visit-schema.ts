import { z } from 'zod'
import type { Visit } from '../records'
import { anyEntry, day, entryOf, id, instant, list, name, number, text } from './parts'

const run = z
  .strictObject({
    id,
    start: anyEntry.nullable(),
    end: anyEntry.nullable(),
    seconds: entryOf('duration').nullable(),
    excluded: text.nullable(),
  })
  .readonly()

const event = { id, at: instant }

const step = z.discriminatedUnion('kind', [
  z
    .strictObject({
      kind: z.literal('test'),
      ...event,
      method: z.enum(['draw-down', 'catch', 'weighed']),
      instrumentId: id.nullable(),
      tubeImmersed: z.boolean(),
      primed: z.boolean(),
      productTemperature: entryOf('temperature').nullable(),
      runs: list(run),
    })
    .readonly(),
  z.strictObject({ kind: z.literal('turn'), ...event, eighths: z.int().min(-800).max(800) }).readonly(),
  z.strictObject({ kind: z.literal('tube-fitted'), ...event }).readonly(),
  z.strictObject({ kind: z.literal('container-changed'), ...event }).readonly(),
  z.strictObject({ kind: z.literal('end-stop'), ...event, direction: z.enum(['up', 'down']) }).readonly(),
])

const verification = z
  .strictObject({
    ...event,
    method: z.enum([
      'strip',
      'chlorine-titration',
      'chlorine-drops',
      'alkalinity-titration',
      'alkalinity-drops',
      'hardness-titration',
      'hardness-drops',
      'conductivity',
    ]),
    where: z.enum(['rinse-water', 'ware', 'wash-tank']),
    instrumentId: id.nullable(),
    reading: number.nullable(),
    step: number.nullable(),
    factor: number.nullable(),
    blank: number.nullable(),
  })
  .readonly()

export const SITE_CHECKS = [
  'supply-pressure',
  'rinse-pressure',
  'rinse-temperature',
  'wash-temperature',
  'drain-air-gap',
  'drain-loop',
  'containers-low',
  'pick-up-and-cap',
  'primed-after-change',
  'tubes-as-installed',
  'high-limit-thermostats',
  'power-to-nameplate',
  'rack-signal',
  'tank-level',
  'water-recorded',
  'jets-and-screens',
  'proof-of-delivery',
  'label-matches-record',
] as const

const checkAnswer = z
  .strictObject({
    machineId: id,
    check: z.enum(SITE_CHECKS),
    answer: z.enum(['ok', 'not-ok', 'not-checked']),
    value: anyEntry.nullable(),
    note: text,
  })
  .readonly()

const reading = z
  .strictObject({
    ...event,
    machineId: id,
    kind: z.enum([
      'rack-counter',
      'rinse-temperature',
      'wash-temperature',
      'ware-temperature',
      'rinse-pressure',
      'supply-pressure',
      'rinse-volume',
      'hardness-supply',
      'hardness-rinse',
      'solids-rinse',
      'conductivity-rinse',
      'pH-rinse',
      'racks-since-fill',
    ]),
    value: anyEntry.nullable(),
    count: number.nullable(),
  })
  .readonly()

export const visit: z.ZodType<Visit> = z
  .strictObject({
    id,
    startedAt: instant,
    by: name,
    checks: list(checkAnswer),
    readings: list(reading),
    work: list(
      z.strictObject({ pumpId: id, steps: list(step), verifications: list(verification) }).readonly(),
    ),
    cautions: list(z.strictObject({ caution: name, productId: id.nullable(), at: instant }).readonly()),
    advice: list(z.strictObject({ id, to: z.enum(['operator', 'rep', 'technician']), text }).readonly()),
    notes: text,
    closing: z
      .strictObject({ at: instant, nextVisitOn: day.nullable(), customerName: name, signedBy: name })
      .readonly()
      .nullable(),
    setupId: id.nullable(),
    amendments: list(z.strictObject({ ...event, by: name, reason: text, text }).readonly()),
  })
  .readonly()
