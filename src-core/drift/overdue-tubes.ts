import type { Day, Pump, Site } from '../records'
import { addDays, daysBetween } from '../units/days'
import { tubeFittedOn } from './tube-fitted-on'

/** What tells how long each tube is in: the set-up, and the visits that fitted a new one. */
type TubesOf = Pick<Site, 'machines' | 'visits'>

/** Pumps whose tube has been in longer than the set-up allows, and by how many days. Unknown dates are not overdue. */
export const overdueTubes = (
  site: TubesOf,
  today: Day,
): readonly { readonly pump: Pump; readonly days: number }[] =>
  site.machines.flatMap((machine) =>
    machine.pumps.flatMap((pump) => {
      const term = termOf(pump, site.visits)
      if (term === null) return []
      const days = Math.round(daysBetween(term.from, today) - term.days)
      return days > 0 ? [{ pump, days }] : []
    }),
  )

/** Beyond this many days (27 centuries) a limit is no limit. */
const MOST_DAYS = 1_000_000

/** The first day on which each tube with a known date and limit is over its time, as `overdueTubes` counts it. */
export const tubesOverOn = (site: TubesOf): readonly Day[] =>
  site.machines.flatMap((machine) =>
    machine.pumps.flatMap((pump) => {
      const term = termOf(pump, site.visits)
      return term === null || term.days > MOST_DAYS ? [] : [addDays(term.from, Math.ceil(term.days + 0.5))]
    }),
  )

/** The day a tube was fitted, and the days it may stay in; null while either is not known. */
function termOf(pump: Pump, visits: Site['visits']): { readonly from: Day; readonly days: number } | null {
  const days = pump.tube.replaceAfterDays === null ? Number.NaN : Number(pump.tube.replaceAfterDays)
  if (!(days > 0)) return null
  const from = tubeFittedOn(pump, visits)
  return from === null ? null : { from, days }
}
