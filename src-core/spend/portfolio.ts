import type { CurrencyCode, Day, Id, Site } from '../records'
import type { Decimal } from '../units/decimal'
import { attentionOf, type AttentionReason } from './attention'
import type { Month } from './months'
import { plannedOrder, type PlannedOrder } from './reorder'
import type { SiteGlance } from './site-glance'

/** What one product costs at one site. Null: not known. */
export interface PortfolioProduct {
  readonly productId: Id
  readonly name: string
  /** L a month */
  readonly litres: number | null
  readonly containers: number | null
  readonly cost: Decimal | null
  readonly reorder: PlannedOrder | null
}

export interface PortfolioMonth {
  readonly month: Month
  readonly cost: Decimal
  readonly unknownLines: number
}

/** One site as a portfolio shows it. */
export interface PortfolioRow {
  readonly siteId: Id
  readonly name: string
  readonly currency: CurrencyCode
  /** the day all its figures hold for, where the site is */
  readonly asOf: Day
  readonly timeZone: string
  /** the sum of the lines known, an average month; `unknownLines` could not be costed */
  readonly cost: Decimal
  readonly unknownLines: number
  readonly costPerRack: Decimal | null
  readonly racks: number | null
  /** L a month of all products known */
  readonly litres: number
  readonly products: readonly PortfolioProduct[]
  readonly months: readonly PortfolioMonth[]
  /** money saved by adjustments in the last year, with its interval */
  readonly saved: { readonly value: number; readonly low: number; readonly high: number } | null
  readonly attention: readonly AttentionReason[]
}

/** What the visits of a site say, besides its spend. */
export interface VisitFacts {
  readonly outOfWindow: number
  readonly notTested: number
  readonly nextVisitOn: Day | null
  /** days over its time, of each tube that is */
  readonly overdueTubes: readonly number[]
}

/** A site's row from its whole spend. */
export function portfolioRow(
  site: Pick<Site, 'id' | 'name' | 'timeZone'>,
  spend: SiteGlance,
  facts: VisitFacts,
): PortfolioRow {
  const products = spend.products.map((product): PortfolioProduct => ({
    productId: product.productId,
    name: product.name,
    litres: product.litresPerMonth.ok ? product.litresPerMonth.value.value : null,
    containers: product.containersPerMonth.ok ? product.containersPerMonth.value : null,
    cost: product.costPerMonth.ok ? product.costPerMonth.value : null,
    reorder: product.reorder.ok ? plannedOrder(product.reorder.value) : null,
  }))
  const saved = spend.savings.ok && spend.savings.value.total.ok ? spend.savings.value.total.value : null
  return {
    siteId: site.id,
    name: site.name,
    currency: spend.currency,
    asOf: spend.asOf,
    timeZone: site.timeZone,
    cost: spend.totals.known,
    unknownLines: spend.totals.unknownLines,
    costPerRack: spend.totals.costPerRack.ok ? spend.totals.costPerRack.value : null,
    racks: spend.totals.racksPerMonth.ok ? spend.totals.racksPerMonth.value : null,
    litres: products.reduce((sum, product) => sum + (product.litres ?? 0), 0),
    products,
    months: spend.months.map(({ month, cost, unknownLines }) => ({ month, cost, unknownLines })),
    saved: saved === null ? null : { value: saved.value, low: saved.low, high: saved.high },
    attention: attentionOf({
      asOf: spend.asOf,
      ...facts,
      reorders: products.flatMap((product) => product.reorder ?? []),
      reconciliations: spend.products.flatMap((product) => product.reconciliations.at(-1) ?? []),
      outlasting: spend.products.flatMap(({ productId, outlasting }) =>
        outlasting.ok && outlasting.value !== null ? [{ productId, ...outlasting.value }] : [],
      ),
      unknownLines: spend.totals.unknownLines,
    }),
  }
}
