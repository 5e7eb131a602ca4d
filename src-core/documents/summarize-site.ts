import type { Id, Instant, Site } from '../records'

export interface SiteSummary {
  readonly name: string
  readonly machines: number
  readonly pumps: number
  readonly visits: number
  readonly closedVisits: number
  readonly lastVisitAt: Instant | null
  readonly stockEntries: number
}

/** How many of each a site holds. */
export const summarizeSite = (site: Site): SiteSummary => ({
  name: site.name,
  machines: site.machines.length,
  pumps: site.machines.reduce((sum, machine) => sum + machine.pumps.length, 0),
  visits: site.visits.length,
  closedVisits: site.visits.filter((visit) => visit.closing !== null).length,
  lastVisitAt: lastVisitAt(site),
  stockEntries: site.stock.length,
})

export const lastVisitAt = (site: Site): Instant | null =>
  site.visits.reduce<Instant | null>(
    (last, visit) => (last === null || visit.startedAt > last ? visit.startedAt : last),
    null,
  )

/** The visit that was started last of those still open. */
export const openVisitId = (site: Site): Id | null =>
  site.visits
    .filter((visit) => visit.closing === null)
    .toSorted((a, b) => (a.startedAt < b.startedAt ? 1 : -1))[0]?.id ?? null
