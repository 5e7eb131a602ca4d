import { fail } from '../outcome'
import type { Day, Instrument, Product, Settings, Site, Visit } from '../records'
import { openCalendar } from '../spend/calendar'
import { siteUse } from '../spend/site-use'
import { averageMonth } from '../spend/span'
import { pumpPasts } from './pump-past'
import { pumpSettings } from './pump-settings'
import { setupOf } from './setup-of'
import type { Worksheet } from './types'
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
 * carries its own problem.
 */
export function computeWorksheet(input: WorksheetInput): Worksheet {
  const { site, asOf } = input
  const ordered = site.visits.toSorted((a, b) => compare(a, b))
  const closed = ordered
    .filter((visit) => visit.closing !== null)
    .map((visit) => {
      const setup = setupOf(site, visit, input)
      return { visit, setup, pumps: closedVisitPumps(site, visit, setup) }
    })
  const pasts = pumpPasts(closed)
  const open = ordered
    .filter((visit) => visit.closing === null)
    .map((visit) => {
      const setup = setupOf(site, visit, input)
      return { visit, setup, pumps: visitPumps({ site, visit, setup, settings: input.settings, pasts }) }
    })
  const worked = [...closed, ...open].toSorted((a, b) => compare(a.visit, b.visit))
  const pumps = site.machines.flatMap((machine) => machine.pumps)
  const { use, racks, totals } = siteUse(site, input.products, pumpSettings(pumps, worked), asOf)
  const calendar = openCalendar(site.calendar, asOf)
  const month = calendar.ok ? averageMonth(calendar.value) : { days: 0, openDays: 0, rackDays: 0 }
  return {
    siteId: site.id,
    siteName: site.name,
    currency: site.currency,
    asOf,
    visits: worked.map((one) =>
      visitResult({
        site,
        ...one,
        month,
        racksOf: (machineId) =>
          racks.find((row) => row.machineId === machineId)?.rate ??
          fail({ code: 'missing', field: 'machine.racksPerDay', needed: 'racks-per-day' }),
      }),
    ),
    use,
    racks,
    totals,
  }
}

const compare = (a: Visit, b: Visit): number =>
  a.startedAt < b.startedAt ? -1 : a.startedAt > b.startedAt ? 1 : 0
