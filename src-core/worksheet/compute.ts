import { once } from '../once'
import { fail, type Outcome } from '../outcome'
import type { Day, Id, Instrument, Product, Settings, Site, Visit } from '../records'
import { openCalendar } from '../spend/calendar'
import { siteUse } from '../spend/site-use'
import { averageMonth } from '../spend/span'
import type { RackRate } from '../spend/types'
import { pumpPasts } from './pump-past'
import { pumpTrend } from './pump-trend'
import { pumpSettings } from './pump-settings'
import { setupOf, type Setup } from './setup-of'
import type { PumpVisit, Worksheet } from './types'
import { closedVisitPumps, visitPumps } from './visit-pumps'
import { visitResult } from './visit-result'

export interface WorksheetInput {
  readonly site: Site
  readonly products: readonly Product[]
  readonly instruments: readonly Instrument[]
  /** null: the program's own wording of cautions counts */
  readonly settings: Settings | null
  readonly asOf: Day
}

/**
 * Everything computed about a site, in one call: every visit with its tests, doses, decisions and advice; the average
 * month's use and cost at the last known settings and the prices of `asOf`. Never throws for bad numbers: each result
 * carries its own problem. Visits and the month are worked out as they are read, and closed visits once.
 */
export function computeWorksheet(input: WorksheetInput): Worksheet {
  const { site, asOf } = input
  const visits = workedVisits(input)
  const pumps = site.machines.flatMap((machine) => machine.pumps)
  const month = once(() => siteUse(site, input.products, pumpSettings(pumps, visits), asOf))
  const calendar = openCalendar(site.calendar, asOf)
  const span = calendar.ok ? averageMonth(calendar.value) : { days: 0, openDays: 0, rackDays: 0 }
  const racksOf = (machineId: Id): Outcome<RackRate> =>
    month().racks.find((row) => row.machineId === machineId)?.rate ??
    fail({ code: 'missing', field: 'machine.racksPerDay', needed: 'racks-per-day' })
  const results = once(() =>
    visits.map(({ visit, setup, worked }) =>
      visitResult({ site, visit, setup, pumps: worked, month: span, racksOf }),
    ),
  )
  const drift = once(() =>
    pumps.flatMap((pump) => {
      const trend = pumpTrend(site, { visits: results(), racks: month().racks, asOf }, input, pump.id)
      return trend.ok ? [{ pumpId: pump.id, drift: trend.value.drift }] : []
    }),
  )
  return {
    siteId: site.id,
    siteName: site.name,
    currency: site.currency,
    asOf,
    get visits() {
      return results()
    },
    get use() {
      return month().use
    },
    get racks() {
      return month().racks
    },
    get totals() {
      return month().totals
    },
    get drift() {
      return drift()
    },
  }
}

/** All visits in order of time; of two begun at once the closed one first. */
function workedVisits(input: WorksheetInput): readonly WorkedVisit[] {
  const { site, settings } = input
  const ordered = site.visits.toSorted(compare)
  const closed = ordered
    .filter((visit) => visit.closing !== null)
    .map((visit) => {
      const setup = once(() => setupOf(site, visit, input))
      return new WorkedVisit(visit, setup, () => closedVisitPumps(site, visit, setup()))
    })
  if (closed.length === ordered.length) return closed
  const pasts = once(() => pumpPasts(closed))
  const open = ordered
    .filter((visit) => visit.closing === null)
    .map((visit) => {
      const setup = once(() => setupOf(site, visit, input))
      return new WorkedVisit(visit, setup, () => visitPumps({ site, visit, setup: setup(), settings, pasts }))
    })
  return [...closed, ...open].toSorted((a, b) => compare(a.visit, b.visit))
}

class WorkedVisit {
  readonly worked: () => readonly PumpVisit[]
  constructor(
    readonly visit: Visit,
    readonly setup: () => Setup,
    work: () => readonly PumpVisit[],
  ) {
    this.worked = once(work)
  }

  get pumps(): readonly PumpVisit[] {
    return this.worked()
  }
}

const compare = (a: Visit, b: Visit): number =>
  a.startedAt < b.startedAt ? -1 : a.startedAt > b.startedAt ? 1 : 0
