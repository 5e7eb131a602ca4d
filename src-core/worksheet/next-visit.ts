import type { Day, Instant, Site } from '../records'
import { addDays } from '../units/days'

/**
 * When the next visit is due: the day set at the last closing, else the usual interval after it. Null when unknown.
 * `dayOf` is the calendar day of an instant at the site.
 */
export function nextVisitDay(
  site: Pick<Site, 'visits' | 'visitEveryDays'>,
  dayOf: (instant: Instant) => Day,
): Day | null {
  const last = site.visits.findLast((visit) => visit.closing !== null)
  if (last?.closing === undefined || last.closing === null) return null
  if (last.closing.nextVisitOn !== null) return last.closing.nextVisitOn
  const every = site.visitEveryDays === null ? Number.NaN : Number(site.visitEveryDays)
  return every > 0 ? addDays(dayOf(last.startedAt), Math.round(every)) : null
}
