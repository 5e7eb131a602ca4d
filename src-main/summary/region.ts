import type { Input, Output } from '#core/contract/contract'
import type { Portfolio } from '#core/contract/ports'
import { packShown, shownRow, unpackRow } from '#core/documents/row-text'
import { portfolioTotals } from '#core/spend/portfolio-totals'
import { currenciesOf, inOrder, passing } from '#core/spend/portfolio-order'
import type { Library } from '#core/worksheet/site-row'
import { SummaryDesk, todayIn, type DeskOptions, type Listing } from './desk'
import { KnownRows, type KnownRow } from './known-rows'
import { linesOf, sumsOf, textsOf, type Sums } from './region-sums'

/** Answers what is shown of all sites. */
export interface Desk extends Portfolio {
  readonly list: () => Promise<Listing>
  readonly close: () => void
}

type View = Input<'portfolio.view'>['view']

/** The rows of one view as they were in one version; sums are added up when first asked for. */
interface Snapshot {
  readonly key: string
  readonly version: string
  readonly rows: readonly KnownRow[]
  readonly sums: Map<string, Promise<Sums>>
}

/** Snapshots kept: going back to an order just left costs nothing, and what is scrolled through stays of one piece. */
const KEPT = 6

/** Finds, orders and adds up the rows of all sites, so that a window holds only what it shows. */
export class Region implements Desk {
  readonly #desk: SummaryDesk
  readonly #known: KnownRows
  readonly #now: () => string
  #snapshots: readonly Snapshot[] = []

  constructor(options: DeskOptions) {
    this.#desk = new SummaryDesk(options)
    this.#known = new KnownRows(this.#desk)
    this.#now = options.now
  }

  list = (): Promise<Listing> => this.#desk.list()
  outlooks: Desk['outlooks'] = (ids, library) => this.#desk.outlooks(ids, library)
  stop = (): Promise<void> => this.#desk.stop()
  close = (): void => this.#desk.close()

  progress = async (library: Library | null): Promise<Output<'portfolio.progress'>> => {
    const progress = await this.#known.refresh(library)
    return { version: this.#known.version, known: this.#known.count, ...progress }
  }

  view = async ({
    view,
    version,
    from,
    count,
  }: Input<'portfolio.view'>): Promise<Output<'portfolio.view'>> => {
    const snapshot = await this.#of(version, view)
    const all = this.#known.byName(view.locale)
    const isEarlier = this.#isEarlier()
    return {
      ...this.#slice(snapshot, from, count),
      known: all.length,
      wanting: all.filter((row) => row.wanting).length,
      earlier: all.filter(isEarlier).length,
      currencies: currenciesOf(all).toSorted(),
      products: [...this.#known.names].map(([id, name]) => ({ id, name })),
      totals: portfolioTotals(snapshot.rows).map((total) => ({ ...total, cost: total.cost.toString() })),
    }
  }

  rows = async ({ view, version, from, count }: Input<'portfolio.rows'>): Promise<Output<'portfolio.rows'>> =>
    this.#slice(await this.#of(version, view), from, count)

  sums = async ({ view, version, until }: Input<'portfolio.sums'>): Promise<Output<'portfolio.sums'>> => {
    const snapshot = await this.#of(version, view)
    const { orders, ...sums } = await this.#sums(snapshot, until)
    return {
      version: snapshot.version,
      months: sums.months.map(({ currency, months }) => ({
        currency,
        months: months.map((month) => ({ ...month, cost: month.cost.toString() })),
      })),
      products: sums.products.map((product) => ({ ...product, cost: product.cost.toString() })),
      orders: orders.map(({ lines, ...group }) => ({
        ...group,
        cost: group.cost.toString(),
        sites: lines.length,
      })),
    }
  }

  orders = async (ask: Input<'portfolio.orders'>): Promise<Output<'portfolio.orders'>> => {
    const snapshot = await this.#of(ask.version, ask.view)
    const lines = await linesOf(snapshot.rows, ask.until, ask.group)
    return {
      lines: lines.slice(0, ask.most).map(({ siteId, siteName, reorder }) => ({
        siteId,
        siteName,
        containers: reorder.containers,
        orderNow: reorder.orderNow,
        orderOn: reorder.orderOn,
        daysOfCover: reorder.daysOfCover,
        runsOutOn: reorder.runsOutOn,
      })),
    }
  }

  table = async (ask: Input<'portfolio.table'>): Promise<Output<'portfolio.table'>> => {
    const snapshot = await this.#of(ask.version, ask.view)
    const productName = (id: string): string => this.#known.names.get(id) ?? 'A product'
    return { text: await textsOf(snapshot.rows, ask, productName) }
  }

  #slice({ version, rows }: Snapshot, from: number, count: number): Output<'portfolio.rows'> {
    const isEarlier = this.#isEarlier()
    const shown = rows.slice(from, from + count).map((row) => shownRow(unpackRow(row.text), isEarlier(row)))
    return { version, from, total: rows.length, rows: packShown(shown) }
  }

  #isEarlier(): (row: KnownRow) => boolean {
    const today = todayIn(this.#now())
    return (row) => row.asOf < today(row.timeZone)
  }

  /** The view in the version named while it is kept, else as things are now. */
  async #of(version: string, view: View): Promise<Snapshot> {
    const key = JSON.stringify(view)
    const found = (wanted: string): Snapshot | undefined =>
      this.#snapshots.find((one) => one.key === key && one.version === wanted)
    if (version === '') await this.#known.refresh(null)
    const kept = found(version === '' ? this.#known.version : version)
    if (kept !== undefined) return this.#keep(kept)
    return this.#keep({
      key,
      version: this.#known.version,
      rows: inOrder(passing(this.#known.byName(view.locale), view.filter), view.sorting),
      sums: new Map(),
    })
  }

  #keep(snapshot: Snapshot): Snapshot {
    this.#snapshots = [snapshot, ...this.#snapshots.filter((one) => one !== snapshot)].slice(0, KEPT)
    return snapshot
  }

  /** Another order of the same sites comes to the same sums, so they are looked for by what is filtered. */
  #sums(snapshot: Snapshot, until: string): Promise<Sums> {
    const same = this.#snapshots.find(
      (one) =>
        one.version === snapshot.version && filterOf(one) === filterOf(snapshot) && one.sums.has(until),
    )
    const sums = same?.sums.get(until) ?? sumsOf(snapshot.rows, until)
    snapshot.sums.set(until, sums)
    return sums
  }
}

const filterOf = ({ key }: Snapshot): string => JSON.stringify((JSON.parse(key) as View).filter)
