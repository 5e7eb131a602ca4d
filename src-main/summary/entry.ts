import type { Day } from '#core/records/index'
import type { SiteFacts } from '#core/documents/site-facts'
import type { SiteOutlook } from '#core/worksheet/site-outlook'

/** What is noted of one site file. It holds for the file with this `mark` and for no other. */
export interface Entry {
  readonly key: string
  readonly mark: string
  readonly changedAt: string
  readonly facts: SiteFacts
  readonly timeZone: string
  /** ids of the products and instruments named anywhere in the file */
  readonly uses: readonly string[]
  readonly row: Row | null
}

/** What was worked out: the portfolio row as text and the outlook, with what they hold for besides the file. */
export interface Row {
  readonly asOf: Day
  /** stands for the records of the library the site names */
  readonly basis: string
  readonly outlook: SiteOutlook
  readonly text: string
}
