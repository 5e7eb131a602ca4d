import { chain, ok, type Outcome } from '../outcome'
import type { CurrencyCode, Day } from '../records'
import { changesSince, type CostChange } from './changes-since'
import { groundOf, type SpendInput } from './ground'
import { monthsOf, type MonthRow } from './months-of'
import { productSpend, type ProductSpend } from './product-spend'
import { yearSavings, type YearSavings } from './savings'
import { scenarioResult, type ScenarioResult } from './scenario'
import type { MachineRacks } from './site-use'
import type { PumpSetting, PumpUse, SpendTotals } from './types'
import { visitCosts, type VisitCost } from './visit-costs'

export type { SpendInput } from './ground'
export type { ProductSpend } from './product-spend'

/** What a site uses and costs: one page of figures, none of them stored. */
export interface SiteSpend {
  readonly currency: CurrencyCode
  readonly asOf: Day
  /** what every pump was last left at */
  readonly settings: readonly PumpSetting[]
  readonly racks: readonly MachineRacks[]
  readonly use: readonly PumpUse[]
  readonly totals: SpendTotals
  readonly products: readonly ProductSpend[]
  readonly months: readonly MonthRow[]
  readonly visits: readonly VisitCost[]
  readonly savings: Outcome<YearSavings>
  readonly changes: Outcome<CostChange>
  readonly scenarios: readonly ScenarioResult[]
}

/** Works out all of `SiteSpend` on the day `asOf`. Each part carries its own problem; none stops another. */
export function siteSpend(input: SpendInput): SiteSpend {
  const { site, asOf } = input
  const ground = groundOf(input)
  const { settings, inTime, fed } = ground
  return {
    currency: site.currency,
    asOf,
    settings,
    racks: ground.racks,
    use: ground.use,
    totals: ground.totals,
    products: fed.map((product) => productSpend(input, product, ground)),
    months: inTime.ok ? monthsOf(inTime.value, fed, asOf) : [],
    visits: visitCosts(input),
    savings: chain(inTime, (when) => ok(yearSavings(when, input.products, asOf))),
    changes: chain(inTime, (when) => changesSince(when, input.products, asOf)),
    scenarios: site.scenarios.map((scenario) =>
      scenarioResult(site, input.products, settings, asOf, scenario),
    ),
  }
}
