import { z } from 'zod'
import type { Machine } from '../records'
import { day, entryOf, id, list, name, number } from './parts'

const volume = entryOf('volume')
const temperature = entryOf('temperature')
const pressure = entryOf('pressure')
const length = entryOf('length')
const duration = entryOf('duration')

const rinse = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('measured'), perRack: volume, spread: number.nullable() }).readonly(),
  z
    .strictObject({
      kind: z.literal('flow-and-seconds'),
      flow: entryOf('flow'),
      seconds: duration,
      spread: number.nullable(),
    })
    .readonly(),
  z.strictObject({ kind: z.literal('data-plate'), perRack: volume, spread: number.nullable() }).readonly(),
])

const wash = z.discriminatedUnion('kind', [
  z
    .strictObject({
      kind: z.literal('tank'),
      volume: volume.nullable(),
      drainAndFillsPerDay: number.nullable(),
      closure: z.enum(['continuous', 'mix-then-overflow', 'displacement']),
      carriedOut: volume.nullable(),
      upstream: z.strictObject({ volume: volume.nullable() }).readonly().nullable(),
      feeding: z.enum(['with-rinse', 'slug']),
    })
    .readonly(),
  z
    .strictObject({ kind: z.literal('dump-and-refill'), heel: volume.nullable(), fill: volume.nullable() })
    .readonly(),
])

const pump = z
  .strictObject({
    id,
    name,
    role: z.enum(['rinse-aid', 'detergent', 'sanitizer', 'delimer', 'other']),
    productId: id.nullable(),
    feeds: z.enum(['final-rinse', 'wash-tank', 'upstream-tank']),
    doseSeconds: duration.nullable(),
    doseSecondsSpread: number.nullable(),
    initialChargeSeconds: duration.nullable(),
    control: z.enum(['time', 'probe']),
    setBy: z.enum(['screw', 'percent', 'seconds']),
    kind: name,
    rollers: z.strictObject({ perMinute: number, count: number }).readonly().nullable(),
    tube: z
      .strictObject({
        fittedOn: day.nullable(),
        outsideDiameter: length.nullable(),
        bore: length.nullable(),
        lineLength: length.nullable(),
        replaceAfterDays: number.nullable(),
      })
      .readonly(),
    screwStops: z.strictObject({ up: number.nullable(), down: number.nullable() }).readonly(),
    window: z
      .strictObject({
        basis: z.enum(['mL-per-rack', 'ppm-vv', 'mg-per-L-product', 'mg-per-L-active', 'g-per-L-tank']),
        low: number,
        target: number,
        high: number,
      })
      .readonly()
      .nullable(),
  })
  .readonly()

export const machine: z.ZodType<Machine> = z
  .strictObject({
    id,
    name,
    class: z.enum(['undercounter', 'door', 'conveyor-single-tank', 'conveyor-multi-tank']),
    sanitizing: z.enum(['hot-water', 'chemical']),
    wash,
    rinse: rinse.nullable(),
    boosterVolume: volume.nullable(),
    dataPlate: z
      .strictObject({
        washTemperatureMin: temperature.nullable(),
        rinseTemperatureMin: temperature.nullable(),
        rinseTemperatureMax: temperature.nullable(),
        rinsePressureMin: pressure.nullable(),
        rinsePressureMax: pressure.nullable(),
      })
      .readonly(),
    racksPerDay: number.nullable(),
    racksSpread: number.nullable(),
    pumps: list(pump),
  })
  .readonly()
