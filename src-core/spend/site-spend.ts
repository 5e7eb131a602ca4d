import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { CurrencyCode, Day, Id, NumberText, Product, Site } from '../records'
import type { Estimate } from '../statistics/estimate'
import { sum } from '../statistics/propagate'
import type { Decimal } from '../units/decimal'
import { readNumber } from '../units/read'
import { openCalendar } from './calendar'
import { changesSince, type CostChange } from './changes-since'
import { containerOf } from './container'
import { settingOn, testsOf } from './history'
import { monthsOf, type MonthRow } from './months-of'
import { reconciliationsOf, stockOn } from './product-stock'
import type { SiteInTime } from './product-over'
import type { Reconciliation } from './reconcile-types'
import { reorder, REVIEW_DAYS, type Reorder } from './reorder'
import { yearSavings, type YearSavings } from './savings'
import { scenarioResult, type ScenarioResult } from './scenario'
import { siteUse, sumOf, type MachineRacks } from './site-use'
import type { PumpDose, PumpSetting, PumpUse, SpendTotals } from './types'
import { visitCosts, type VisitCost } from './visit-costs'

export interface SpendInput {
  readonly site: Site
  readonly products: readonly Product[]
  readonly asOf: Day
  /** percent */
  readonly serviceLevel: NumberText
  /** every pump of every visit, in any order */
  readonly doses: readonly PumpDose[]
}

/** Everything about one product at a site. */
export interface ProductSpend {
  readonly productId: Id
  readonly name: string
  readonly litresPerMonth: Outcome<Estimate<'L/month'>>
  readonly containersPerMonth: Outcome<number>
  /** the sum of its pumps' rounded lines */
  readonly costPerMonth: Outcome<Decimal>
  readonly stock: Outcome<Estimate<'L'>>
  readonly reorder: Outcome<Reorder>
  /** oldest first */
  readonly reconciliations: readonly Reconciliation[]
}

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
  const settings = settingsOn(input, asOf)
  const { use, racks, totals } = siteUse(site, input.products, settings, asOf)
  const calendar = openCalendar(site.calendar, asOf)
  const inTime = chain(calendar, (open): Outcome<SiteInTime> =>
    ok({
      site,
      calendar: open,
      racks: new Map(racks.map((row) => [row.machineId, row.rate])),
      doses: input.doses,
    }),
  )
  const fed = new Set(site.machines.flatMap((machine) => machine.pumps.map((pump) => pump.productId)))
  const products = input.products.filter((product) => fed.has(product.id))
  return {
    currency: site.currency,
    asOf,
    settings,
    racks,
    use,
    totals,
    products: products.map((product) => productSpend(input, product, use, inTime)),
    months: inTime.ok ? monthsOf(inTime.value, products, asOf) : [],
    visits: visitCosts(input),
    savings: chain(inTime, (when) => ok(yearSavings(when, input.products, asOf))),
    changes: chain(inTime, (when) => changesSince(when, input.products, asOf)),
    scenarios: site.scenarios.map((scenario) =>
      scenarioResult(site, input.products, settings, asOf, scenario),
    ),
  }
}

/** The setting of every pump on a day. */
export const settingsOn = (
  { site, doses }: Pick<SpendInput, 'site' | 'doses'>,
  day: Day,
): readonly PumpSetting[] =>
  site.machines.flatMap((machine) =>
    machine.pumps.flatMap((pump) => settingOn(testsOf(doses, pump.id), day) ?? []),
  )

function productSpend(
  input: SpendInput,
  product: Product,
  use: readonly PumpUse[],
  inTime: Outcome<SiteInTime>,
): ProductSpend {
  const { site, asOf } = input
  const own = use.filter((line) => line.productId === product.id)
  const litresPerMonth = chain(all(own.map((line) => line.litresPerMonth)), (litres) =>
    sum(litres, 'L/month', { shared: ['racks'] }),
  )
  const stock = chain(inTime, (when) => stockOn(when, product, asOf))
  const interval =
    site.visitEveryDays === null
      ? ok(REVIEW_DAYS)
      : readNumber(site.visitEveryDays, 'site.visitEveryDays', { low: 1, high: 730 })
  return {
    productId: product.id,
    name: product.name,
    litresPerMonth,
    containersPerMonth: chain(
      all([litresPerMonth, containerOf(product, asOf, site.currency)]),
      ([l, size]) =>
        size > 0 ? ok(l.value / size) : fail({ code: 'cannot-compute', reason: 'outside-valid-range' }),
    ),
    costPerMonth: chain(all(own.map((line) => line.costPerMonth)), (costs) => ok(sumOf(costs))),
    stock,
    reorder: chain(interval, (coverDays) =>
      reorder({
        product,
        currency: site.currency,
        asOf,
        stock,
        perMonth: litresPerMonth,
        serviceLevel: input.serviceLevel,
        coverDays,
      }),
    ),
    reconciliations: inTime.ok ? reconciliationsOf(inTime.value, product) : [],
  }
}
