import { z } from 'zod'
import type { Instrument, Product, Settings, Site } from '../records'
import { instrument, product, settings } from './library-schema'
import { machine } from './machine-schema'
import { anyEntry, currency, day, entryOf, id, instant, list, name, number, text } from './parts'
import { visit } from './visit-schema'

const water = z
  .strictObject({
    hardness: entryOf('hardness').nullable(),
    solids: entryOf('solids').nullable(),
    conductivity: entryOf('conductivity').nullable(),
    alkalinity: entryOf('hardness').nullable(),
    calcium: entryOf('hardness').nullable(),
    pH: number.nullable(),
    temperature: entryOf('temperature').nullable(),
    softener: z.enum(['none', 'fitted', 'unknown']),
  })
  .readonly()

const scenario = z
  .strictObject({
    id,
    name,
    racksPercent: number.nullable(),
    rinseVolumePercent: number.nullable(),
    changes: list(
      z
        .strictObject({
          pumpId: id,
          productId: id.nullable(),
          dosePercent: number.nullable(),
          pricePerContainer: number.nullable(),
          containerSize: entryOf('volume').nullable(),
          strengthPercent: number.nullable(),
        })
        .readonly(),
    ),
  })
  .readonly()

const glassCheck = z
  .strictObject({
    id,
    at: instant,
    machineId: id.nullable(),
    seen: list(name),
    ware: list(z.enum(['glass', 'cutlery', 'plates'])),
    spread: z.enum(['all', 'one-zone', 'unknown']),
    since: z.enum(['new', 'weeks', 'unknown']),
    answers: list(z.strictObject({ evidence: name, answer: z.enum(['yes', 'no', 'unknown']) }).readonly()),
    confirmedCause: name.nullable(),
    confirmedAt: instant.nullable(),
  })
  .readonly()

const machineOrder = z
  .strictObject({
    movedAt: instant.nullable(),
    ids: list(id),
    added: list(z.strictObject({ id, at: instant }).readonly()),
  })
  .readonly()

export const site: z.ZodType<Site> = z
  .strictObject({
    id,
    name,
    currency,
    units: z.enum(['metric', 'us', 'imperial']),
    timeZone: name,
    notes: text,
    visitEveryDays: number.nullable(),
    calendar: z
      .strictObject({
        daysPerWeek: number,
        closures: list(z.strictObject({ id, from: day, to: day, reason: text }).readonly()),
        seasons: list(z.strictObject({ month: z.int().min(1).max(12), percent: number }).readonly()),
        growthPercentPerYear: number.nullable(),
      })
      .readonly(),
    water,
    machines: list(machine),
    visits: list(visit),
    stock: list(
      z
        .strictObject({
          id,
          on: day,
          productId: id,
          kind: z.enum(['count', 'delivery']),
          fullContainers: number,
          containerSize: entryOf('volume'),
          part: anyEntry.nullable(),
          tare: entryOf('mass').nullable(),
          reference: text,
          visitId: id.nullable(),
        })
        .readonly(),
    ),
    snapshots: list(
      z
        .strictObject({
          id,
          at: instant,
          machines: list(machine),
          water,
          products: list(product),
          instruments: list(instrument),
        })
        .readonly(),
    ),
    scenarios: list(scenario),
    glassChecks: list(glassCheck),
    machineOrder: machineOrder.exactOptional(),
  })
  .readonly()

/**
 * The site file, version 2. As it travels it carries the products and instruments the site uses; in the data folder
 * both lists are empty, because the library documents hold them.
 */
export interface SiteFile {
  readonly format: 'dosewright-site'
  readonly version: 2
  readonly site: Site
  readonly products: readonly Product[]
  readonly instruments: readonly Instrument[]
}

export const siteFile: z.ZodType<SiteFile> = z
  .strictObject({
    format: z.literal('dosewright-site'),
    version: z.literal(2),
    site,
    products: list(product),
    instruments: list(instrument),
  })
  .readonly()

export interface ProductsFile {
  readonly format: 'dosewright-products'
  readonly version: 1
  readonly products: readonly Product[]
}

export const productsFile: z.ZodType<ProductsFile> = z
  .strictObject({ format: z.literal('dosewright-products'), version: z.literal(1), products: list(product) })
  .readonly()

export interface InstrumentsFile {
  readonly format: 'dosewright-instruments'
  readonly version: 1
  readonly instruments: readonly Instrument[]
}

export const instrumentsFile: z.ZodType<InstrumentsFile> = z
  .strictObject({
    format: z.literal('dosewright-instruments'),
    version: z.literal(1),
    instruments: list(instrument),
  })
  .readonly()

export interface SettingsFile {
  readonly format: 'dosewright-settings'
  readonly version: 1
  readonly settings: Settings
}

export const settingsFile: z.ZodType<SettingsFile> = z
  .strictObject({ format: z.literal('dosewright-settings'), version: z.literal(1), settings })
  .readonly()
