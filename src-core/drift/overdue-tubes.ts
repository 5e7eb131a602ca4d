import type { Day, Pump, Site } from '../records'
import { addDays, daysBetween } from '../units/days'

/** Pumps whose tube has been in longer than the set-up allows, and by how many days. Unknown dates are not overdue. */
export const overdueTubes = (
  site: Pick<Site, 'machines'>,
  today: Day,
): readonly { readonly pump: Pump; readonly days: number }[] =>
  site.machines.flatMap((machine) =>
    machine.pumps.flatMap((pump) => {
      const term = termOf(pump)
      if (term === null) return []
      const days = Math.round(daysBetween(term.from, today) - term.days)
      return days > 0 ? [{ pump, days }] : []
    }),
  )

/** Beyond this many days (27 centuries) a limit is no limit. */
const MOST_DAYS = 1_000_000

/** The first day on which each tube with a known date and limit is over its time, as `overdueTubes` counts it. */
export const tubesOverOn = (site: Pick<Site, 'machines'>): readonly Day[] =>
  site.machines.flatMap((machine) =>
    machine.pumps.flatMap((pump) => {
      const term = termOf(pump)
      return term === null || term.days > MOST_DAYS ? [] : [addDays(term.from, Math.ceil(term.days + 0.5))]
    }),
  )

/** The day a tube was fitted, and the days it may stay in; null while either is not known. */
function termOf({ tube }: Pump): { readonly from: Day; readonly days: number } | null {
  const days = tube.replaceAfterDays === null ? Number.NaN : Number(tube.replaceAfterDays)
  return tube.fittedOn === null || !(days > 0) ? null : { from: tube.fittedOn, days }
}
