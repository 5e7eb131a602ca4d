import type { Session } from '../../state/session.svelte'
import { dayIn } from '../../state/clock.svelte'
import { siteOutlook, type Sign } from '../../state/site-outlook'
import type { GoodRow } from './site-list.svelte'

/** How many sites are looked into at a time; the list stays quick while the signs come in. */
const AT_ONCE = 2

/** Signs of the sites in sight, worked out one after another as their rows come into view. */
export class Outlooks {
  #signs: ReadonlyMap<string, readonly Sign[]> = $state.raw(new Map())
  readonly #asked = new Set<string>()
  readonly #queue: GoodRow[] = []
  #running = 0

  constructor(private readonly session: Session) {}

  signs(row: GoodRow): readonly Sign[] | null {
    return this.#signs.get(key(row)) ?? null
  }

  ask(row: GoodRow): void {
    if (this.#asked.has(key(row))) return
    this.#asked.add(key(row))
    this.#queue.push(row)
    if (this.#running < AT_ONCE) void this.#work()
  }

  async #work(): Promise<void> {
    this.#running += 1
    for (let row = this.#queue.shift(); row !== undefined; row = this.#queue.shift()) await this.#look(row)
    this.#running -= 1
  }

  async #look(row: GoodRow): Promise<void> {
    const [{ computeWorksheet }, opened] = await Promise.all([
      import('#core/worksheet/compute'),
      this.session.call('site.open', { id: row.id }),
    ])
    if (!opened.ok) return
    const { site } = opened.value
    const { products, instruments, settings } = this.session
    const today = dayIn(new Date(), site.timeZone)
    const worksheet = computeWorksheet({ site, products, instruments, settings, asOf: today })
    this.#signs = new Map([...this.#signs, [key(row), siteOutlook(site, worksheet, today)]])
  }
}

const key = (row: GoodRow): string =>
  `${row.id} ${row.changedAt ?? ''} ${row.visits} ${row.openVisitId ?? ''}`
