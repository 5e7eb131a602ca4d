import type { Id, Instant, Site } from '../records'
import { lastVisitAt, openVisitId, summarizeSite } from './summarize-site'

/** What the list of sites says about one: the same whether read from the site or from what was noted of it. */
export interface SiteFacts {
  readonly id: Id
  readonly name: string
  readonly machines: number
  readonly pumps: number
  readonly visits: number
  readonly lastVisitAt: Instant | null
  readonly openVisitId: Id | null
}

export function siteFacts(site: Site): SiteFacts {
  const { name, machines, pumps, visits } = summarizeSite(site)
  return {
    id: site.id,
    name,
    machines,
    pumps,
    visits,
    lastVisitAt: lastVisitAt(site),
    openVisitId: openVisitId(site),
  }
}
