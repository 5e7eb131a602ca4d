import type { Site, Visit } from '#core/records/index'

/** The visit that is under way: the last one without a closing. */
export const openVisit = (site: Site): Visit | null =>
  site.visits.findLast((visit) => visit.closing === null) ?? null
