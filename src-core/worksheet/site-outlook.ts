import { tubesOverOn } from '../drift/overdue-tubes'
import type { Day, Instant, Site } from '../records'
import { nextVisitDay } from './next-visit'
import type { PumpVisit, Worksheet } from './types'

/** How the last closed visit left the pumps it went to. */
export interface LeftPumps {
  readonly all: number
  /** outside their window, proved or not */
  readonly out: number
  /** inside their window, proved or not */
  readonly inside: number
  readonly proved: number
}

/** What a site looks like from a distance. Holds on any day: what is due is said by its day. */
export interface SiteOutlook {
  readonly timeZone: string
  /** null before the first visit is closed */
  readonly left: LeftPumps | null
  readonly nextVisitOn: Day | null
  /** the first day each tube is over its time */
  readonly tubesOverOn: readonly Day[]
}

/** `dayOf`: the calendar day of an instant at the site. */
export function outlookOf(
  site: Site,
  worksheet: Pick<Worksheet, 'visits'>,
  dayOf: (instant: Instant) => Day,
): SiteOutlook {
  const last = worksheet.visits.findLast((visit) => visit.closed)
  return {
    timeZone: site.timeZone,
    left: last === undefined ? null : leftPumps(last.pumps),
    nextVisitOn: nextVisitDay(site, dayOf),
    tubesOverOn: tubesOverOn(site),
  }
}

function leftPumps(pumps: readonly PumpVisit[]): LeftPumps {
  const count = (...states: readonly PumpVisit['state'][]): number =>
    pumps.filter((pump) => states.includes(pump.state)).length
  return {
    all: pumps.length,
    out: count('proved-out', 'out-not-proved'),
    inside: count('proved-in', 'in-not-proved'),
    proved: count('proved-in'),
  }
}
