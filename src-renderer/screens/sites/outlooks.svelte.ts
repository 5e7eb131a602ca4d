import type { SiteRow } from '#core/contract/contract'
import type { SiteOutlook } from '#core/worksheet/site-outlook'
import { dayIn } from '../../state/clock.svelte'
import type { Session } from '../../state/session.svelte'
import { signsOf, type Sign } from '../../state/site-outlook'
import type { GoodRow } from './site-list.svelte'

/** Sites asked about together: what is not noted yet takes the host a moment each, and signs come in bit by bit. */
const TOGETHER = 10

/** Signs of the sites shown. */
export class Outlooks {
  #known: ReadonlyMap<string, SiteOutlook> = $state.raw(new Map())
  readonly #asked = new Set<string>()
  #queue: readonly GoodRow[] = []
  #working: Promise<void> | null = null

  constructor(private readonly session: Session) {}

  signs(row: GoodRow): readonly Sign[] | null {
    const outlook = this.#known.get(key(row))
    if (outlook === undefined) return null
    return signsOf(row, outlook, dayIn(this.session.workspace.clock.minute, outlook.timeZone))
  }

  /** Asks for the signs of these, and no more for those wanted before. Done when all are there. */
  want(rows: readonly SiteRow[]): Promise<void> {
    this.#queue = rows.filter((row): row is GoodRow => row.state === 'good' && !this.#asked.has(key(row)))
    this.#working ??= this.#work().finally(() => (this.#working = null))
    return this.#working
  }

  async #work(): Promise<void> {
    while (this.#queue.length > 0) {
      const rows = this.#queue.slice(0, TOGETHER)
      this.#queue = this.#queue.slice(TOGETHER)
      for (const row of rows) this.#asked.add(key(row))
      const answer = await this.session.call('sites.outlooks', { ids: rows.map((row) => row.id) })
      if (!answer.ok) continue
      const found = new Map(answer.value.outlooks.map(({ id, outlook }) => [id, outlook]))
      const known = new Map(this.#known)
      for (const row of rows) {
        const outlook = found.get(row.id)
        if (outlook !== undefined) known.set(key(row), outlook)
      }
      this.#known = known
    }
  }
}

const key = (row: GoodRow): string =>
  `${row.id} ${row.changedAt ?? ''} ${row.visits} ${row.openVisitId ?? ''}`
