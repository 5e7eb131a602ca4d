import { all, chain, fail, type Outcome } from '../outcome'
import type { Day, Product } from '../records'
import type { Estimate } from '../statistics/estimate'
import { estimate, exactly } from '../statistics/make-estimate'
import { difference, sum } from '../statistics/propagate'
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

/**
 * What should be on the shelf on a day, L: the last count, deliveries since, less what the pumps used since; never below
 * nothing. Problem: `missing` stock count.
 */
export function stockOn(inTime: SiteInTime, product: Product, day: Day): Outcome<Estimate<'L'>> {
  const last = countsOf(inTime.site.stock, product)
    .filter((count) => count.on <= day)
    .at(-1)
  if (last === undefined) return fail({ code: 'missing', field: 'stock', needed: 'stock-count' })
  const came = deliveredBetween(inTime.site.stock, product, last, {
    on: day,
    place: inTime.site.stock.length,
  })
  const used = productLitres(inTime, product, dayNumberOf(last.on), dayNumberOf(day))
  const counted = chain(last.level, (level) =>
    estimate(level.litres.toNumber(), 'L', [{ source: 'count', standard: level.standard }]),
  )
  const delivered = chain(came, (litres) => exactly(litres.toNumber(), 'L'))
  return chain(all([counted, delivered, used]), ([start, more, gone]) =>
    chain(sum([start, more], 'L'), (had) => chain(difference(had, gone), notBelowNothing)),
  )
}

const notBelowNothing = (left: Estimate<'L'>): Outcome<Estimate<'L'>> => {
  const low = Math.max(0, left.low)
  return { ok: true, value: { ...left, value: Math.max(0, left.value), low, high: Math.max(low, left.high) } }
}
