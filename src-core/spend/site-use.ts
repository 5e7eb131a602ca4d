import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { Day, Id, Product, Site } from '../records'
import { Decimal } from '../units/decimal'
import { openCalendar } from './calendar'
import { counterReadings } from './counter'
import { pumpUse, roundPerRack, type PumpUseInput } from './pump-use'
import { rackRate } from './racks'
import { averageMonth } from './span'
import type { PumpSetting, PumpUse, RackRate, SpendTotals } from './types'

export interface MachineRacks {
  readonly machineId: Id
  readonly rate: Outcome<RackRate>
  readonly racksPerMonth: Outcome<number>
}

/**
 * The average month of a site, pump by pump, at the settings given and the prices of the day `asOf` (or `priceDay`).
 * Totals are sums of the rounded lines. `racksFactor`: racks over those of today, for a what-if.
 */
export function siteUse(
  site: Site,
  products: readonly Product[],
  settings: readonly PumpSetting[],
  asOf: Day,
  options: { readonly racksFactor?: number; readonly priceDay?: Day } = {},
): {
  /** what each line of use was worked out from */
  readonly inputs: readonly PumpUseInput[]
  readonly use: readonly PumpUse[]
  readonly racks: readonly MachineRacks[]
  readonly totals: SpendTotals
} {
  const calendar = openCalendar(site.calendar, asOf)
  const month = chain(calendar, (open) => ok(averageMonth(open)))
  const racks = site.machines.map((machine): MachineRacks => {
    const rate = chain(calendar, (open) =>
      chain(rackRate(machine, open, counterReadings(site.visits, machine.id)), (racks) =>
        ok({ ...racks, perOpenDay: racks.perOpenDay * (options.racksFactor ?? 1) }),
      ),
    )
    return {
      machineId: machine.id,
      rate,
      racksPerMonth: chain(all([rate, month]), ([r, m]) => ok(r.perOpenDay * m.rackDays)),
    }
  })
  const inputs = site.machines.flatMap((machine, index) =>
    machine.pumps.map((pump): PumpUseInput => ({
      pump,
      machine,
      product: products.find((product) => product.id === pump.productId) ?? null,
      currency: site.currency,
      day: options.priceDay ?? asOf,
      span: month.ok ? month.value : { days: 0, openDays: 0, rackDays: 0 },
      racks: racks[index]?.rate ?? fail({ code: 'not-found', what: machine.name }),
      setting: settings.find((setting) => setting.pumpId === pump.id) ?? null,
    })),
  )
  const use = inputs.map(pumpUse)
  return { inputs, use, racks, totals: totalsOf(use, racks, site.currency) }
}

/** Sums of rounded lines. Cost per rack: the site's money over the site's racks, all machines together. */
export function totalsOf(
  use: readonly PumpUse[],
  racks: readonly MachineRacks[],
  currency: string,
): SpendTotals {
  const lines = all(use.map((line) => line.costPerMonth))
  const costPerMonth = chain(lines, (costs) => ok(sumOf(costs)))
  const racksPerMonth = chain(all(racks.map((row) => row.racksPerMonth)), (counts) =>
    ok(counts.reduce((sum, count) => sum + count, 0)),
  )
  const onePerRack = racks.length === 1 ? all(use.map((line) => line.costPerRack)) : null
  return {
    costPerMonth,
    racksPerMonth,
    costPerRack:
      onePerRack !== null
        ? chain(onePerRack, (costs) => ok(sumOf(costs)))
        : chain(all([costPerMonth, racksPerMonth]), ([cost, count]) =>
            count > 0
              ? ok(roundPerRack(cost.div(count), currency))
              : fail({ code: 'cannot-compute', reason: 'outside-valid-range' }),
          ),
    known: sumOf(use.flatMap((line) => (line.costPerMonth.ok ? [line.costPerMonth.value] : []))),
    unknownLines: use.filter((line) => !line.costPerMonth.ok).length,
  }
}

export const sumOf = (amounts: readonly Decimal[]): Decimal =>
  amounts.reduce((sum, amount) => sum.plus(amount), new Decimal(0))
