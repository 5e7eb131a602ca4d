import type { NumberText } from '../units/entry'
import type { CurrencyCode } from './basics'

/** How this installation speaks and counts. */
export interface Settings {
  readonly repName: string
  readonly firmName: string
  readonly decimalSign: 'point' | 'comma'
  readonly theme: 'system' | 'light' | 'dark'
  readonly sheet: 'A4' | 'Letter'
  readonly currency: CurrencyCode
  readonly units: 'metric' | 'us' | 'imperial'
  readonly protocol: {
    readonly runs: NumberText
    readonly seconds: NumberText
  }
  /** replaces the shipped wording of a caution, by its id */
  readonly cautionTexts: readonly { readonly caution: string; readonly text: string }[]
  /** replaces a limit of the shipped code table, by its id */
  readonly codeLimits: readonly {
    readonly limit: string
    readonly value: NumberText
    readonly source: string
  }[]
  /** replaces a prior or a weight of the glass check, by its key */
  readonly glassWeights: readonly { readonly key: string; readonly value: NumberText }[]
  /** column headings of the last delivery import, by field */
  readonly deliveryColumns: readonly { readonly field: string; readonly column: string }[]
  /** how likely stock must last until the next delivery, percent */
  readonly serviceLevel: NumberText
}
