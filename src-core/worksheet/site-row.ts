import type { Day, Instant, Instrument, Product, Settings, Site } from '../records'
import { overdueTubes } from '../drift/overdue-tubes'
import { portfolioRow, type PortfolioRow, type VisitFacts } from '../spend/portfolio'
import { computeWorksheet } from './compute'
import { nextVisitDay } from './next-visit'
import { glanceOf } from './spend-of'
import type { Worksheet } from './types'

export interface Library {
  readonly products: readonly Product[]
  readonly instruments: readonly Instrument[]
  readonly settings: Settings
}

/** A site's row in the portfolio as of the day `asOf`; `dayOf` is the calendar day of an instant at the site. */
export function siteRow(
  site: Site,
  library: Library,
  asOf: Day,
  dayOf: (instant: Instant) => Day,
): PortfolioRow {
  const worksheet = computeWorksheet({ site, ...library, asOf })
  const nextVisitOn = nextVisitDay(site, dayOf)
  return portfolioRow(site, glanceOf(worksheet, { site, ...library }), {
    ...visitFacts(worksheet),
    nextVisitOn,
    overdueTubes: overdueTubes(site, asOf).map(({ days }) => days),
  })
}

function visitFacts(worksheet: Worksheet): Omit<VisitFacts, 'nextVisitOn' | 'overdueTubes'> {
  const last = worksheet.visits.findLast((visit) => visit.closed)
  return {
    outOfWindow:
      last?.pumps.filter((pump) => pump.state === 'proved-out' || pump.state === 'out-not-proved').length ??
      0,
    notTested: worksheet.use.filter((use) => use.doseFrom === 'none').length,
  }
}
