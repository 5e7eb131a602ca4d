import type { Instrument, Product, Settings, Site } from '#core/records/index'
import { portfolioRow, type PortfolioRow, type VisitFacts } from '#core/spend/portfolio'
import { computeWorksheet } from '#core/worksheet/compute'
import { glanceOf } from '#core/worksheet/spend-of'
import type { Worksheet } from '#core/worksheet/types'
import { dayIn } from '../../state/clock.svelte'
import type { Session } from '../../state/session.svelte'
import { nextVisitDay } from '../../state/site-outlook'

export interface Library {
  readonly products: readonly Product[]
  readonly instruments: readonly Instrument[]
  readonly settings: Settings
}

/** A site that has no row, and what its list entry is called. */
export interface Unread {
  readonly id: string
  readonly name: string
}

/** What was worked out stays while the site, the library and the day stay. */
const kept = new Map<string, PortfolioRow>()
let keptFor: readonly unknown[] = []

/** Sites are shown as they come in, but seldom: sorting and drawing thousands takes its own time. */
const SHOW_EVERY_MS = 1500
/** the window stays alive between two sites */
const BREATHE_MS = 40

/** The rows of all sites, worked out one after another while the screen is open. */
export class SiteRows {
  rows: readonly PortfolioRow[] = $state.raw([])
  unread: readonly Unread[] = $state.raw([])
  /** sites there are, once the list is read */
  total: number | null = $state(null)
  done = $state(0)
  running = $state(false)
  failed: string | null = $state(null)
  #stopped = false

  constructor(private readonly session: Session) {}

  async read(says: (problem: never) => string): Promise<void> {
    const listed = await this.session.call('sites.list', {})
    if (!listed.ok) {
      this.failed = says(listed.problem as never)
      return
    }
    const { products, instruments, settings } = this.session
    const library = { products, instruments, settings }
    const now = [products, instruments, settings, this.session.today]
    if (now.some((part, index) => part !== keptFor[index])) kept.clear()
    keptFor = now
    const sites = listed.value.sites
    this.total = sites.length
    this.running = true
    const rows: PortfolioRow[] = []
    const unread: Unread[] = []
    let shown = performance.now()
    let breathed = shown
    for (const entry of sites) {
      if (this.#stopped) break
      if (entry.state === 'good') {
        const key = `${entry.id} ${entry.changedAt ?? ''}`
        const row = kept.get(key) ?? (await this.#work(entry.id, library))
        if (row === null) unread.push({ id: entry.id, name: entry.name })
        else {
          kept.set(key, row)
          rows.push(row)
        }
      } else
        unread.push({
          id: entry.id,
          name: `${entry.id}, ${entry.state === 'newer' ? 'of a newer version' : 'damaged'}`,
        })
      this.done += 1
      if (performance.now() - shown > SHOW_EVERY_MS) {
        this.rows = [...rows]
        shown = performance.now()
      }
      if (performance.now() - breathed > BREATHE_MS) {
        await new Promise((go) => setTimeout(go, 0))
        breathed = performance.now()
      }
    }
    this.rows = rows
    this.unread = unread
    this.running = false
  }

  stop(): void {
    this.#stopped = true
  }

  async #work(id: string, library: Library): Promise<PortfolioRow | null> {
    const opened = await this.session.call('site.open', { id })
    return opened.ok ? rowOf(opened.value.site, library) : null
  }
}

/** A site's row as of today in its own time zone. */
export function rowOf(site: Site, library: Library, now = new Date()): PortfolioRow {
  const asOf = dayIn(now, site.timeZone)
  const worksheet = computeWorksheet({ site, ...library, asOf })
  return portfolioRow(site, glanceOf(worksheet, { site, ...library }), visitFacts(site, worksheet))
}

function visitFacts(site: Site, worksheet: Worksheet): VisitFacts {
  const last = worksheet.visits.findLast((visit) => visit.closed)
  return {
    outOfWindow:
      last?.pumps.filter((pump) => pump.state === 'proved-out' || pump.state === 'out-not-proved').length ??
      0,
    notTested: worksheet.use.filter((use) => use.doseFrom === 'none').length,
    nextVisitOn: nextVisitDay(site),
  }
}
