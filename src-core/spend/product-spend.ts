import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { Id, Product } from '../records'
import type { Estimate } from '../statistics/estimate'
import { sum } from '../statistics/propagate'
import type { Decimal } from '../units/decimal'
import { readNumber } from '../units/read'
import { useAhead } from './ahead'
import { containerOf } from './container'
import type { Ground, SpendInput } from './ground'
import { reconciliationsOf } from './product-stock'
import { stockOn } from './stock-on'
import type { Reconciliation } from './reconcile-types'
import { reorder, REVIEW_DAYS, type Reorder } from './reorder'
import { outlasting, type Outlasting } from './shelf-life'
import { sumOf } from './site-use'

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
  /** what will not be, or is not, used up while it keeps; null: nothing */
  readonly outlasting: Outcome<Outlasting | null>
  /** oldest first */
  readonly reconciliations: readonly Reconciliation[]
}

/** Works out one product of a site; at most the latest `mostReconciliations`. */
export function productSpend(
  input: SpendInput,
  product: Product,
  { use, inTime }: Ground,
  mostReconciliations?: number,
): ProductSpend {
  const { site, asOf } = input
  const own = use.filter((line) => line.productId === product.id)
  const litresPerMonth = chain(all(own.map((line) => line.litresPerMonth)), (litres) =>
    sum(litres, 'L/month', { shared: ['racks'] }),
  )
  const stock = chain(inTime, (when) => stockOn(when, product, asOf))
  const ahead = chain(all([inTime, litresPerMonth]), ([when, litres]) =>
    ok(useAhead(when.calendar, litres.value)),
  )
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
    reorder: chain(all([interval, ahead]), ([coverDays, use]) =>
      reorder({
        product,
        currency: site.currency,
        asOf,
        stock,
        perMonth: litresPerMonth,
        serviceLevel: input.serviceLevel,
        coverDays,
        ahead: use,
      }),
    ),
    outlasting: chain(all([stock, ahead]), ([left, use]) =>
      outlasting(product, site.stock, left.value, use, asOf),
    ),
    reconciliations: inTime.ok ? reconciliationsOf(inTime.value, product, mostReconciliations) : [],
  }
}
