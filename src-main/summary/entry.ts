import type { Day } from '#core/records/index'
import type { SiteFacts } from '#core/documents/site-facts'

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

/** The portfolio row as text, with what it was worked out from besides the file. */
export interface Row {
  readonly asOf: Day
  /** stands for the records of the library the site names */
  readonly basis: string
  readonly text: string
}
