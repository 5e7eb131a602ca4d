import type { Day, Instant, Instrument, Product, Settings, Site } from '../records'
import { overdueTubes } from '../drift/overdue-tubes'
import { portfolioRow, type PortfolioRow } from '../spend/portfolio'
import { computeWorksheet } from './compute'
import { outlookOf, type SiteOutlook } from './site-outlook'
import { glanceOf } from './spend-of'

export interface Library {
  readonly products: readonly Product[]
  readonly instruments: readonly Instrument[]
  readonly settings: Settings
}

/** What is noted of a site: its row in the portfolio, and what the list of sites shows of it. */
export interface SiteNotes {
  readonly row: PortfolioRow
  readonly outlook: SiteOutlook
}

/** A site's row and outlook as of the day `asOf`; `dayOf` is the calendar day of an instant at the site. */
export function siteNotes(
  site: Site,
  library: Library,
  asOf: Day,
  dayOf: (instant: Instant) => Day,
): SiteNotes {
  const worksheet = computeWorksheet({ site, ...library, asOf })
  const outlook = outlookOf(site, worksheet, dayOf)
  const row = portfolioRow(site, glanceOf(worksheet, { site, ...library }), {
    outOfWindow: outlook.left?.out ?? 0,
    notTested: worksheet.use.filter((use) => use.doseFrom === 'none').length,
    nextVisitOn: outlook.nextVisitOn,
    overdueTubes: overdueTubes(site, asOf).map(({ days }) => days),
  })
  return { row, outlook }
}

/** A site's row in the portfolio, for arguments as those of `siteNotes`. */
export const siteRow = (...of: Parameters<typeof siteNotes>): PortfolioRow => siteNotes(...of).row
