import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { Id, Machine, Product, Pump, Site } from '../records'
import type { Estimate } from '../statistics/estimate'
import { sum } from '../statistics/propagate'
import { Decimal } from '../units/decimal'
import type { OpenCalendar } from './calendar'
import { testsOf } from './history'
import type { PumpDose, RackRate } from './types'
import { costOver, litresOver, type UseOverInput } from './use-over'

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
 * Litres of one product between two day numbers, all its pumps together. Pumps of one machine share their rack count;
 * machines are independent.
 */
export function productLitres(
  inTime: SiteInTime,
  product: Product,
  from: number,
  to: number,
): Outcome<Estimate<'L'>> {
  const machines = inTime.site.machines.map((machine) => {
    const litres = usesOf(inTime, product, machine, from, to).map(litresOver)
    return chain(all(litres), (used) => sum(used, 'L', { shared: ['racks', 'rinse-volume'] }))
  })
  return chain(all(machines), (litres) => sum(litres, 'L'))
}

/** Unrounded money of one product between two day numbers, all its pumps together. */
export function productCost(
  inTime: SiteInTime,
  product: Product,
  from: number,
  to: number,
): Outcome<Decimal> {
  const costs = inTime.site.machines.flatMap((machine) =>
    usesOf(inTime, product, machine, from, to).map(costOver),
  )
  return chain(all(costs), (money) => ok(money.reduce((total, one) => total.plus(one), new Decimal(0))))
}

const usesOf = (
  { site, calendar, racks, doses }: SiteInTime,
  product: Product,
  machine: Machine,
  from: number,
  to: number,
): readonly UseOverInput[] =>
  machine.pumps
    .filter((pump) => pump.productId === product.id)
    .map((pump) => ({
      pump,
      machine,
      product,
      currency: site.currency,
      calendar,
      racks: racks.get(machine.id) ?? fail({ code: 'not-found', what: machine.name }),
      tests: testsOf(doses, pump.id),
      from,
      to,
    }))
