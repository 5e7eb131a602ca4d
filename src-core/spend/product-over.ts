import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { Id, Machine, Product, Pump, Site } from '../records'
import type { Estimate } from '../statistics/estimate'
import { sum } from '../statistics/propagate'
import { Decimal } from '../units/decimal'
import type { OpenCalendar } from './calendar'
import { testsOf } from './history'
import type { PumpDose, RackRate } from './types'
import { useOver } from './use-over'

export interface SiteInTime {
  readonly site: Site
  readonly calendar: OpenCalendar
  /** by machine */
  readonly racks: ReadonlyMap<Id, Outcome<RackRate>>
  readonly doses: readonly PumpDose[]
}

/** The pumps of a site that feed a product, with their machines. */
export const pumpsOf = (
  site: Site,
  productId: Id,
): readonly { readonly machine: Machine; readonly pump: Pump }[] =>
  site.machines.flatMap((machine) =>
    machine.pumps.filter((pump) => pump.productId === productId).map((pump) => ({ machine, pump })),
  )

/**
 * Litres and unrounded money of one product between two day numbers, all its pumps together. Pumps of one machine share
 * their rack count; machines are independent.
 */
export function productOver(
  inTime: SiteInTime,
  product: Product,
  from: number,
  to: number,
): { readonly litres: Outcome<Estimate<'L'>>; readonly cost: Outcome<Decimal> } {
  const { site, calendar, racks, doses } = inTime
  const machines = site.machines.map((machine) => {
    const uses = machine.pumps
      .filter((pump) => pump.productId === product.id)
      .map((pump) =>
        useOver({
          pump,
          machine,
          product,
          currency: site.currency,
          calendar,
          racks: racks.get(machine.id) ?? fail({ code: 'not-found', what: machine.name }),
          tests: testsOf(doses, pump.id),
          from,
          to,
        }),
      )
    return {
      litres: chain(all(uses.map((use) => use.litres)), (litres) =>
        sum(litres, 'L', { shared: ['racks', 'rinse-volume'] }),
      ),
      costs: uses.map((use) => use.cost),
    }
  })
  return {
    litres: chain(all(machines.map((machine) => machine.litres)), (litres) => sum(litres, 'L')),
    cost: chain(all(machines.flatMap((machine) => machine.costs)), (costs) =>
      ok(costs.reduce((total, cost) => total.plus(cost), new Decimal(0))),
    ),
  }
}
