import type { Day, GlassCheck, Site } from '../records'
import { daysBetween } from '../units/days'
import { isCause } from './causes'
import { curesTried } from './check-findings'
import type { SiteHistory } from './findings'

/** JUDGEMENT: days for which a confirmed cause still says something about the same machine. */
export const CONFIRMED_LASTS_DAYS = 730

/**
 * What the site's own past says for a check: causes the rep confirmed at the same machine in the last two years, and
 * cures this check has tried in vain. A check does not count for itself.
 */
export function siteHistory(site: Site, check: GlassCheck, today: Day): SiteHistory {
  return {
    confirmed: site.glassChecks.flatMap((other) => {
      const { confirmedCause, confirmedAt } = other
      if (other.id === check.id || other.machineId !== check.machineId) return []
      if (confirmedCause === null || confirmedAt === null || !isCause(confirmedCause)) return []
      return daysBetween(confirmedAt, today) <= CONFIRMED_LASTS_DAYS ? [confirmedCause] : []
    }),
    triedInVain: curesTried(check)
      .filter((cure) => !cure.helped)
      .map((cure) => cure.cause),
  }
}
