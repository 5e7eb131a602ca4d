import { setImmediate as breathe } from 'node:timers/promises'
import { unpackRow } from '#core/documents/row-text'
import { byName, rowFacts, type RowFacts } from '#core/spend/portfolio-order'
import type { Library } from '#core/worksheet/site-row'
import type { News, SummaryDesk } from './desk'

/** What is at hand of each site: what ordering needs, and the whole row as its text, read only where it is shown. */
export interface KnownRow extends RowFacts {
  readonly text: string
}

/** The rows of the desk as they are now, ready to be ordered. */
export class KnownRows {
  readonly #desk: SummaryDesk
  readonly #rows = new Map<string, KnownRow>()
  readonly #names = new Map<string, string>()
  #run = ''
  #since = 0
  /** one after another, so that no news is taken in twice */
  #turn: Promise<News['progress']> | null = null
  #inOrder: { readonly key: string; readonly rows: readonly KnownRow[] } | null = null

  constructor(desk: SummaryDesk) {
    this.#desk = desk
  }

  get version(): string {
    return `${this.#run}.${this.#since}`
  }

  get count(): number {
    return this.#rows.size
  }

  /** Names of all products met, by id. */
  get names(): ReadonlyMap<string, string> {
    return this.#names
  }

  /** Takes in what is new; with a library the desk begins a round first. */
  async refresh(library: Library | null): Promise<News['progress']> {
    const before = this.#turn
    const mine = (async () => {
      // a disk that failed a moment ago is no reason not to look again
      await before?.catch(() => null)
      return this.#take(library)
    })()
    this.#turn = mine
    return mine
  }

  /** All rows by name, as a reader of the language expects it. */
  byName(locale: string): readonly KnownRow[] {
    const key = `${this.version} ${locale}`
    if (this.#inOrder?.key === key) return this.#inOrder.rows
    const rows = byName([...this.#rows.values()], locale)
    this.#inOrder = { key, rows }
    return rows
  }

  async #take(library: Library | null): Promise<News['progress']> {
    for (let begin = library !== null; ; begin = false) {
      const news = await this.#desk.rows({ begin, run: this.#run, since: this.#since }, library)
      if (news.run !== this.#run) this.#rows.clear()
      for (const id of news.gone) this.#rows.delete(id)
      for (const text of news.rows) this.#note(text)
      this.#run = news.run
      this.#since = news.since
      if (!news.more) return news.progress
      await breathe()
    }
  }

  #note(text: string): void {
    const row = unpackRow(text)
    for (const { productId, name } of row.products) this.#names.set(productId, name)
    this.#rows.set(row.siteId, { ...rowFacts(row), text })
  }
}
