import type { Product } from '../records'
import { dayNumberOf } from '../units/days'
import { containerOf } from './container'
import { countsOf, deliveredBetween, type StockCount } from './counts'
import { driftWithin, racksWithin } from './period'
import { productLitres, type SiteInTime } from './product-over'
import { reconcile } from './reconcile'
import type { Reconciliation } from './reconcile-types'

/**
 * One reconciliation for every two stock counts of a product that follow each other, oldest first; at most the latest
 * `most` of them.
 */
export function reconciliationsOf(
  inTime: SiteInTime,
  product: Product,
  most = Number.POSITIVE_INFINITY,
): readonly Reconciliation[] {
  const counts = countsOf(inTime.site.stock, product).slice(-most - 1)
  return counts.slice(1).map((closing, index) => {
    const opening = counts[index] ?? closing
    return between(inTime, product, opening, closing)
  })
}

function between(
  inTime: SiteInTime,
  product: Product,
  opening: StockCount,
  closing: StockCount,
): Reconciliation {
  const [from, to] = [opening.on, closing.on]
  const { racks, counted } = racksWithin(inTime, product, from, to)
  const container = containerOf(product, to, inTime.site.currency)
  return reconcile({
    product,
    from,
    to,
    opening: opening.level,
    closing: closing.level,
    delivered: deliveredBetween(inTime.site.stock, product, opening, closing),
    theory: productLitres({ ...inTime, racks }, product, dayNumberOf(from), dayNumberOf(to)),
    drift: driftWithin(inTime, product, from, to),
    counted,
    container: container.ok ? container.value : null,
  })
}
