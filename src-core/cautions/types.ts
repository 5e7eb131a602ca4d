import type { Id, Product, Site } from '../records'

/** The moment in the work at which a caution matters. */
export type CautionTrigger =
  | 'before-first-test'
  | 'tube-moved'
  | 'panel-off'
  | 'licensed-work'
  | 'hot-water-reading'
  | 'sanitizer-outside-label'
  | 'operator-view'
  | 'spill'
  | 'after-visit'

/** Stable: stands in saved visits and in Settings.cautionTexts. Never reuse or rename one. */
export type CautionId =
  | 'read-label'
  | 'protect-yourself'
  | 'corrosive'
  | 'never-mix'
  | 'flush-and-swap'
  | 'isolate-power'
  | 'licensed-only'
  | 'scald'
  | 'do-not-serve'
  | 'operator-limits'
  | 'spill-first-aid'
  | 'leave-safe'

/** One row of the caution table. `{product}` and `{others}` in the text are filled with names. */
export interface CautionRow {
  readonly id: CautionId
  readonly title: string
  readonly text: string
  /** stop: nothing goes on before it is answered; warn: shown with weight; note: shown quietly */
  readonly severity: 'stop' | 'warn' | 'note'
  /** what the person says by acknowledging; null when nothing is asked */
  readonly confirm: string | null
  readonly triggers: readonly CautionTrigger[]
  /** shown once per product at hand rather than once per visit */
  readonly perProduct: boolean
  readonly source: string
}

/** A product that must not meet the product at hand, and what would happen. */
export interface IncompatiblePartner {
  readonly productId: Id
  readonly name: string
  readonly releases: 'chlorine-gas' | 'chloramine-gas'
}

export interface Caution {
  readonly id: CautionId
  readonly productId: Id | null
  readonly productName: string | null
  readonly title: string
  readonly text: string
  readonly severity: CautionRow['severity']
  readonly confirm: string | null
  readonly source: string
  /** the text was replaced in the settings */
  readonly edited: boolean
  /** filled for `never-mix`: the products on this site this one must not meet */
  readonly partners: readonly IncompatiblePartner[]
}

export interface CautionRequest {
  /** the site: its pumps and its stock say which products are in the house */
  readonly site: Pick<Site, 'machines' | 'stock'>
  readonly products: readonly Product[]
  readonly trigger: CautionTrigger
  /** the product at hand; left out: every product on the site, for triggers that speak of products */
  readonly productId?: Id | null
  /** Settings.cautionTexts */
  readonly texts?: readonly { readonly caution: string; readonly text: string }[]
}
