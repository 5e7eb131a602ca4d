import type { z } from 'zod'
import type { MigrationStep } from './migrate'
import {
  instrumentsFile,
  productsFile,
  settingsFile,
  siteFile,
  type InstrumentsFile,
  type ProductsFile,
  type SettingsFile,
  type SiteFile,
} from './site-schema'
import { siteWithSecondTank } from './steps/site-with-second-tank'

/** Each kind of document and the type of its file. */
export interface Documents {
  readonly site: SiteFile
  readonly products: ProductsFile
  readonly instruments: InstrumentsFile
  readonly settings: SettingsFile
}
export type DocumentKind = keyof Documents

export interface Format<T> {
  readonly format: string
  readonly version: number
  readonly schema: z.ZodType<T>
  readonly steps: readonly MigrationStep[]
}

/** Every format this program reads: its name in the file, the version it writes, and the way up from older ones. */
export const FORMATS: { readonly [K in DocumentKind]: Format<Documents[K]> } = {
  site: { format: 'dosewright-site', version: 2, schema: siteFile, steps: [siteWithSecondTank] },
  products: { format: 'dosewright-products', version: 1, schema: productsFile, steps: [] },
  instruments: { format: 'dosewright-instruments', version: 1, schema: instrumentsFile, steps: [] },
  settings: { format: 'dosewright-settings', version: 1, schema: settingsFile, steps: [] },
}
