import type { Day, Pump, Site } from '../records'
import { daysBetween } from '../units/days'

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
