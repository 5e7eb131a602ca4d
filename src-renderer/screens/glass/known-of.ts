import type { KnownInput } from '#core/glass/known-types'
import type { Machine } from '#core/records/index'
import { pumpTrend } from '#core/worksheet/pump-trend'
import type { SiteSession } from '../../state/site-session.svelte'

/** What the record can tell about a machine: computed visits, and how fast its rinse-aid flow falls. */
export function knownOf(session: SiteSession, machine: Machine | null): KnownInput | null {
  if (machine === null) return null
  const { site, worksheet, products, instruments, today } = session
  const falls = machine.pumps
    .filter((pump) => pump.role === 'rinse-aid')
    .flatMap((pump) => {
      const trend = pumpTrend(site, worksheet, { products, instruments }, pump.id)
      const outlook = trend.ok ? trend.value.drift.outlook : null
      return outlook?.ok === true ? [[pump.id, outlook.value.decay.rate] as const] : []
    })
  return { site, machine, visits: worksheet.visits, today, fallPerDay: new Map(falls) }
}
