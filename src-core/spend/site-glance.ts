import { chain, ok, type Outcome } from '../outcome'
import type { CurrencyCode, Day } from '../records'
import { groundOf, type SpendInput } from './ground'
import { monthCosts, type MonthRow } from './months-of'
import { productSpend, type ProductSpend } from './product-spend'
import { yearSavings, type YearSavings } from './savings'
import type { SpendTotals } from './types'

/** What a portfolio shows of a site: a part of `SiteSpend`, worked out in a fraction of its time. */
export interface SiteGlance {
  readonly currency: CurrencyCode
  readonly asOf: Day
  readonly totals: SpendTotals
  /** with the latest reconciliation only */
  readonly products: readonly ProductSpend[]
  readonly months: readonly Pick<MonthRow, 'month' | 'cost' | 'unknownLines'>[]
  readonly savings: Outcome<YearSavings>
}

/** Works out a `SiteGlance` on the day `asOf`. */
export function siteGlance(input: SpendInput): SiteGlance {
  const { site, asOf } = input
  const ground = groundOf(input)
  const { inTime, fed } = ground
  return {
    currency: site.currency,
    asOf,
    totals: ground.totals,
    products: fed.map((product) => productSpend(input, product, ground, 1)),
    months: inTime.ok ? monthCosts(inTime.value, fed, asOf) : [],
    savings: chain(inTime, (when) => ok(yearSavings(when, input.products, asOf))),
  }
}
