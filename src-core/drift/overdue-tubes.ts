import type { Day, Pump, Site } from '../records'
import { addDays, daysBetween } from '../units/days'

/** Pumps whose tube has been in longer than the set-up allows, and by how many days. Unknown dates are not overdue. */
export const overdueTubes = (
  site: Pick<Site, 'machines'>,
  today: Day,
): readonly { readonly pump: Pump; readonly days: number }[] =>
  site.machines.flatMap((machine) =>
    machine.pumps.flatMap((pump) => {
      const { fittedOn, replaceAfterDays } = pump.tube
      const limit = replaceAfterDays === null ? Number.NaN : Number(replaceAfterDays)
      if (fittedOn === null || !(limit > 0)) return []
      const days = Math.round(daysBetween(fittedOn, today) - limit)
      return days > 0 ? [{ pump, days }] : []
    }),
  )

/** Beyond this many days (27 centuries) a limit is no limit. */
const MOST_DAYS = 1_000_000

/** The first day on which each tube with a known date and limit is over its time, as `overdueTubes` counts it. */
export const tubesOverOn = (site: Pick<Site, 'machines'>): readonly Day[] =>
  site.machines.flatMap((machine) =>
    machine.pumps.flatMap(({ tube: { fittedOn, replaceAfterDays } }) => {
      const limit = replaceAfterDays === null ? Number.NaN : Number(replaceAfterDays)
      if (fittedOn === null || !(limit > 0) || limit > MOST_DAYS) return []
      return [addDays(fittedOn, Math.ceil(limit + 0.5))]
    }),
  )
