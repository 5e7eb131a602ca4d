import type { Call, Output } from '#core/contract/contract'
import { unpackRow } from '#core/documents/row-text'
import { sentence } from '#core/messages/sentence'
import type { PortfolioRow } from '#core/spend/portfolio'
import { dayIn } from '../../state/clock.svelte'

type Page = Output<'portfolio.rows'>

/** What this window has of the rows: kept from one visit to the screen to the next, so that only news is fetched. */
interface Kept {
  run: string
  since: number
  readonly rows: Map<string, PortfolioRow>
}
const keptBy = new WeakMap<Call, Kept>()

/** Rows are shown as they come in, but seldom: sorting and drawing thousands takes its own time. */
const SHOW_EVERY_MS = 1500
/** between two questions while the host works */
const ASK_EVERY_MS = 400

/** The rows of all sites: those the host knows at once, the others as it works them out. */
export class SiteRows {
  rows: readonly PortfolioRow[] = $state.raw([])
  /** how far the host is; null before its first answer */
  page: Page | null = $state.raw(null)
  /** rows are still coming in */
  loading = $state(false)
  failed: string | null = $state(null)
  readonly #call: Call
  readonly #kept: Kept
  #reading = 0

  constructor(call: Call) {
    this.#call = call
    this.#kept = keptBy.get(call) ?? { run: '', since: 0, rows: new Map() }
    keptBy.set(call, this.#kept)
  }

  /** Asks for what has changed, and goes on until the host has worked out everything. */
  async read(): Promise<void> {
    this.#reading += 1
    const mine = this.#reading
    this.loading = true
    let shown = performance.now()
    for (let begin = true; mine === this.#reading; begin = false) {
      const { run, since } = this.#kept
      const answer = await this.#call('portfolio.rows', { begin, run, since })
      if (mine !== this.#reading) return
      if (!answer.ok) {
        this.failed = sentence(answer.problem)
        break
      }
      const page = answer.value
      const news = this.#take(page)
      const goesOn = page.more || page.running
      if (!goesOn || (news && !page.more) || performance.now() - shown > SHOW_EVERY_MS) {
        this.rows = [...this.#kept.rows.values()]
        shown = performance.now()
      }
      this.page = page
      if (!goesOn) break
      if (!page.more) await wait(ASK_EVERY_MS)
    }
    this.loading = false
  }

  /** The host leaves what is not worked out for another time. */
  async stop(): Promise<void> {
    await this.#call('portfolio.stop', {})
  }

  /** The screen goes; the host goes on, so that everything is there the next time. */
  leave(): void {
    this.#reading += 1
  }

  #take(page: Page): boolean {
    const kept = this.#kept
    if (page.run !== kept.run) kept.rows.clear()
    for (const id of page.gone) kept.rows.delete(id)
    for (const text of page.rows) {
      const row = unpackRow(text)
      kept.rows.set(row.siteId, row)
    }
    kept.run = page.run
    kept.since = page.since
    return page.rows.length + page.gone.length > 0
  }
}

/** Rows that hold for an earlier day than today at their site. */
export function ofEarlierDays(rows: readonly PortfolioRow[], now = new Date()): readonly PortfolioRow[] {
  const days = new Map<string, string>()
  return rows.filter((row) => {
    const today = days.get(row.timeZone) ?? dayIn(now, row.timeZone)
    days.set(row.timeZone, today)
    return row.asOf < today
  })
}

const wait = (ms: number): Promise<void> => new Promise((go) => setTimeout(go, ms))
