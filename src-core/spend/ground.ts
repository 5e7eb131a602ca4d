import { chain, ok, type Outcome } from '../outcome'
import type { Day, NumberText, Product, Site } from '../records'
import { openCalendar } from './calendar'
import { settingOn, testsOf } from './history'
import type { SiteInTime } from './product-over'
import { siteUse, type MachineRacks } from './site-use'
import type { PumpDose, PumpSetting, PumpUse, SpendTotals } from './types'

export interface SpendInput {
  readonly site: Site
  readonly products: readonly Product[]
  readonly asOf: Day
  /** percent */
  readonly serviceLevel: NumberText
  /** every pump of every visit, in any order */
  readonly doses: readonly PumpDose[]
}

/** What every part of a spend stands on. */
export interface Ground {
  /** what every pump was last left at */
  readonly settings: readonly PumpSetting[]
  readonly racks: readonly MachineRacks[]
  readonly use: readonly PumpUse[]
  readonly totals: SpendTotals
  readonly inTime: Outcome<SiteInTime>
  /** the products that pumps feed */
  readonly fed: readonly Product[]
}

export function groundOf(input: SpendInput): Ground {
  const { site, asOf } = input
  const settings = settingsOn(input, asOf)
  const { use, racks, totals } = siteUse(site, input.products, settings, asOf)
  const inTime = chain(openCalendar(site.calendar, asOf), (open): Outcome<SiteInTime> =>
    ok({
      site,
      calendar: open,
      racks: new Map(racks.map((row) => [row.machineId, row.rate])),
      doses: input.doses,
    }),
  )
  const wanted = new Set(site.machines.flatMap((machine) => machine.pumps.map((pump) => pump.productId)))
  const fed = input.products.filter((product) => wanted.has(product.id))
  return { settings, use, racks, totals, inTime, fed }
}

/** The setting of every pump on a day. */
const settingsOn = ({ site, doses }: Pick<SpendInput, 'site' | 'doses'>, day: Day): readonly PumpSetting[] =>
  site.machines.flatMap((machine) =>
    machine.pumps.flatMap((pump) => settingOn(testsOf(doses, pump.id), day) ?? []),
  )
