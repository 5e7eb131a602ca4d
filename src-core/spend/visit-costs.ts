import type { Outcome } from '../outcome'
import type { Day, Id, Product, Site } from '../records'
import type { Decimal } from '../units/decimal'
import { settingOn, testsOf } from './history'
import { siteUse } from './site-use'
import type { PumpDose } from './types'

/** What a month cost at the settings a visit left, at the prices of its day and at today's. */
export interface VisitCost {
  readonly visitId: Id
  readonly on: Day
  readonly atItsDay: Outcome<Decimal>
  readonly atToday: Outcome<Decimal>
}

/** One row per visit that tested a pump, oldest first. Racks as they were known then in both; only the price differs. */
export function visitCosts(input: {
  readonly site: Site
  readonly products: readonly Product[]
  readonly asOf: Day
  readonly doses: readonly PumpDose[]
}): readonly VisitCost[] {
  const { site, products, doses, asOf } = input
  const visits = new Map(
    doses
      .filter((dose) => dose.left !== null && dose.on <= asOf)
      .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0))
      .map((dose) => [dose.visitId, dose.on]),
  )
  const pumps = site.machines.flatMap((machine) => machine.pumps)
  const tests = new Map(pumps.map((pump) => [pump.id, testsOf(doses, pump.id)]))
  return [...visits].map(([visitId, on]) => {
    const settings = pumps.flatMap((pump) => settingOn(tests.get(pump.id) ?? [], on) ?? [])
    return {
      visitId,
      on,
      atItsDay: siteUse(site, products, settings, on).totals.costPerMonth,
      atToday: siteUse(site, products, settings, on, { priceDay: asOf }).totals.costPerMonth,
    }
  })
}
