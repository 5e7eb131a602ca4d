import type { Call, Input, Output } from '#core/contract/contract'
import { unpackShown, type ShownRow } from '#core/documents/row-text'
import { sentence } from '#core/messages/sentence'
import type { Problem } from '#core/problem'
import type { CurrencyTotal } from '#core/spend/portfolio-totals'
import type { Filter, Sorting } from '#core/spend/portfolio-order'
import { afterPaint } from '../../state/after-paint'
import { readSums, readTotals, type OrderGroup, type RegionSums } from './read-sums'
import { BLOCK, HELD, RowBlocks } from './row-blocks'

type Progress = Output<'portfolio.progress'>
type View = Input<'portfolio.view'>['view']
export type Table = Input<'portfolio.table'>['table']
export type OrderLine = Output<'portfolio.orders'>['lines'][number]

/** A view as the host answered it, without its rows. */
export interface Look extends Omit<Output<'portfolio.view'>, 'rows' | 'totals' | 'from'> {
  readonly view: View
  readonly totals: readonly CurrencyTotal[]
}

/** between two questions while the host works */
const ASK_EVERY_MS = 400
/** Rows that come in are shown, but seldom: reading a list that jumps is work. */
const SHOW_EVERY_MS = 1500
/** rows fetched ahead in the direction of the scroll, and behind it */
const AHEAD = 150
const BEHIND = 50

const LOCALE = new Intl.Collator().resolvedOptions().locale

/** All sites as this window sees them: totals, and the rows in sight. Finding, ordering and adding up is the host's. */
export class Region {
  progress: Progress | null = $state.raw(null)
  look: Look | null = $state.raw(null)
  /** null while they are being added up */
  sums: (RegionSums & { readonly until: string }) | null = $state.raw(null)
  /** how many of the parts below the table may be drawn: one a frame, so that none keeps a key waiting */
  parts = $state(0)
  /** rows are still coming in */
  loading = $state(false)
  failed: string | null = $state(null)
  #rows = $state.raw(new RowBlocks())
  readonly #call: Call
  #view: View
  #until = ''
  #range = { first: 0, last: BLOCK, down: true }
  #reading = 0
  #looking = 0
  #fetching = false
  #adding = false

  constructor(call: Call, filter: Filter, sorting: Sorting) {
    this.#call = call
    this.#view = { filter, sorting, locale: LOCALE }
  }

  /** The row at a place of the view; null while it is being fetched. */
  row(index: number): ShownRow | null {
    return this.#rows.row(index)
  }

  /** Looks at all sites anew, and goes on until the host has worked out everything. */
  async read(): Promise<void> {
    const mine = (this.#reading += 1)
    this.loading = true
    this.failed = null
    let shown = 0
    for (let begin = true; ; begin = false) {
      const answer = await this.#call('portfolio.progress', { begin })
      if (mine !== this.#reading) return
      if (!answer.ok) {
        this.#fail(answer.problem)
        break
      }
      this.progress = answer.value
      const { running, version } = answer.value
      const news = begin || version !== this.look?.version
      if (news && (!running || performance.now() - shown > SHOW_EVERY_MS)) {
        await this.#lookAgain()
        if (mine !== this.#reading) return
        shown = performance.now()
      }
      if (!running) break
      await new Promise((go) => setTimeout(go, ASK_EVERY_MS))
      if (mine !== this.#reading) return
    }
    this.loading = false
    void this.#addUp()
  }

  /** Other sites, or another order of them. */
  async arrange(filter: Filter, sorting: Sorting): Promise<void> {
    this.#view = { filter, sorting, locale: LOCALE }
    this.#range = { first: 0, last: BLOCK, down: true }
    if (this.look?.view.filter !== filter) this.#dropSums()
    await this.#lookAgain()
    if (!this.loading) void this.#addUp()
  }

  /** The last day the shopping list looks to. */
  orderUntil(day: string): void {
    if (this.#until === day) return
    this.#until = day
    if (this.look !== null && !this.loading) void this.#addUp()
  }

  /** Rows `first` to `last` are in sight. */
  inSight(first: number, last: number): void {
    this.#range = { first, last, down: first >= this.#range.first }
    void this.#fetch()
  }

  /** The sites of one group of the shopping list, at most so many. */
  async ordersOf(group: OrderGroup, most: number): Promise<readonly OrderLine[]> {
    const { productId, containerLitres, currency } = group
    const answer = await this.#call('portfolio.orders', {
      ...this.#shown(),
      until: this.#until,
      group: { productId, containerLitres, currency },
      most,
    })
    if (answer.ok) return answer.value.lines
    this.#fail(answer.problem)
    return []
  }

  /** The sites of the view as a file of values; null when there is no answer. */
  async table(table: Table, decimalSign: 'point' | 'comma'): Promise<string | null> {
    const ask = { ...this.#shown(), table, decimalSign, until: this.#until }
    const answer = await this.#call('portfolio.table', ask)
    if (answer.ok) return answer.value.text
    this.#fail(answer.problem)
    return null
  }

  /** The host leaves what is not worked out for another time. */
  async stop(): Promise<void> {
    await this.#call('portfolio.stop', {})
  }

  /** The screen goes; the host goes on, so that everything is there the next time. */
  leave(): void {
    this.#reading += 1
    this.#looking += 1
  }

  #fail(problem: Problem): void {
    this.failed = sentence(problem)
  }

  #shown(): { readonly version: string; readonly view: View } {
    return { version: this.look?.version ?? '', view: this.look?.view ?? this.#view }
  }

  async #lookAgain(): Promise<void> {
    const mine = (this.#looking += 1)
    const view = this.#view
    const from = Math.max(0, Math.floor(this.#range.first / BLOCK)) * BLOCK
    const count = Math.ceil((this.#range.last - from) / BLOCK) * BLOCK + BLOCK
    const answer = await this.#call('portfolio.view', { view, version: '', from, count })
    if (mine !== this.#looking) return
    if (!answer.ok) return this.#fail(answer.problem)
    this.failed = null
    const { rows, totals, ...rest } = answer.value
    if (this.look?.version !== rest.version) this.#dropSums()
    this.#rows = new RowBlocks().with(from, unpackShown(rows))
    this.look = { ...rest, view, totals: readTotals(totals) }
    void this.#fetch()
  }

  /** What is in sight first, then what will be, then what is printed. */
  async #fetch(): Promise<void> {
    if (this.#fetching) return
    this.#fetching = true
    for (;;) {
      const { look } = this
      const { first, last, down } = this.#range
      if (look === null) break
      const total = look.total
      const wanted =
        this.#rows.missing(first, last, total) ??
        this.#rows.missing(first - (down ? BEHIND : AHEAD), last + (down ? AHEAD : BEHIND), total) ??
        this.#rows.missing(0, HELD, total)
      if (wanted === null) break
      const answer = await this.#call('portfolio.rows', { ...wanted, version: look.version, view: look.view })
      if (look !== this.look) continue
      if (!answer.ok) {
        this.#fail(answer.problem)
        break
      }
      if (answer.value.version !== look.version) {
        await this.#lookAgain()
        continue
      }
      const rows = unpackShown(answer.value.rows)
      if (rows.length === 0) break
      this.#rows = this.#rows.with(wanted.from, rows)
    }
    this.#fetching = false
  }

  #dropSums(): void {
    this.sums = null
    this.parts = 0
  }

  async #addUp(): Promise<void> {
    if (this.#adding) return
    this.#adding = true
    for (;;) {
      const { look } = this
      const until = this.#until
      if (look === null || look.total === 0 || until === '') break
      if (this.sums !== null && this.sums.until === until) break
      const answer = await this.#call('portfolio.sums', { version: look.version, view: look.view, until })
      if (!answer.ok) {
        this.#fail(answer.problem)
        break
      }
      if (answer.value.version !== look.version) {
        await this.#lookAgain()
        continue
      }
      if (look.version !== this.look?.version || look.view.filter !== this.look.view.filter) continue
      if (until !== this.#until) continue
      this.sums = { ...readSums(answer.value), until }
    }
    this.#adding = false
    while (this.sums !== null && this.parts < 3) {
      await afterPaint()
      if (this.sums !== null) this.parts += 1
    }
  }
}
