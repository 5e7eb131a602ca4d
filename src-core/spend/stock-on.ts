import { chain, fail, ok, type Outcome } from '../outcome'
import type { Day, Product, StockMovement } from '../records'
import type { Estimate } from '../statistics/estimate'
import { estimate, exactly } from '../statistics/make-estimate'
import { difference, sum } from '../statistics/propagate'
import { dayNumberOf } from '../units/days'
import { Decimal } from '../units/decimal'
import { countsOf, type StockCount } from './counts'
import { productLitres, type SiteInTime } from './product-over'
import { stocked } from './stock'

/**
 * What should be on the shelf on a day, L: the last count, deliveries since, less what the pumps used since; never below
 * nothing, also not when a delivery comes to a shelf that was empty by then: what pumps could not have drawn from it is
 * not taken off what came later. Problem: `missing` stock count.
 */
export function stockOn(inTime: SiteInTime, product: Product, day: Day): Outcome<Estimate<'L'>> {
  const last = countsOf(inTime.site.stock, product)
    .filter((count) => count.on <= day)
    .at(-1)
  if (last === undefined) return fail({ code: 'missing', field: 'stock', needed: 'stock-count' })
  const counted = chain(last.level, (level) =>
    estimate(level.litres.toNumber(), 'L', [{ source: 'count', standard: level.standard }]),
  )
  return chain(counted, (start) => {
    let since: Since = { on: last.on, start, came: new Decimal(0) }
    for (const delivery of deliveriesAfter(inTime.site.stock, product, last, day)) {
      const lot = stocked(delivery, product)
      if (!lot.ok) return lot
      const left = leftOf(inTime, product, since, delivery.on)
      if (!left.ok) return left
      const begun = left.value.value < 0 ? emptyOn(delivery.on, left.value) : ok(since)
      if (!begun.ok) return begun
      since = { ...begun.value, came: begun.value.came.plus(lot.value.litres) }
    }
    return chain(leftOf(inTime, product, since, day), notBelowNothing)
  })
}

/** The shelf from a day on: what stood there, and what came since. */
interface Since {
  readonly on: Day
  readonly start: Estimate<'L'>
  readonly came: Decimal
}

/** Below nothing where the pumps are thought to have drawn more than there was. */
function leftOf(inTime: SiteInTime, product: Product, { on, start, came }: Since, day: Day) {
  const used = productLitres(inTime, product, dayNumberOf(on), dayNumberOf(day))
  return chain(used, (gone) =>
    chain(exactly(came.toNumber(), 'L'), (more) =>
      chain(sum([start, more], 'L'), (had) => difference(had, gone)),
    ),
  )
}

/** A shelf that was empty on a day, known as well as it was before. */
const emptyOn = (on: Day, { standard }: Estimate<'L'>): Outcome<Since> =>
  chain(estimate(0, 'L', [{ source: 'count', standard }]), (start) => ok({ on, start, came: new Decimal(0) }))

const deliveriesAfter = (
  movements: readonly StockMovement[],
  product: Product,
  count: StockCount,
  day: Day,
): readonly StockMovement[] =>
  movements
    .filter(
      (movement, place) =>
        movement.kind === 'delivery' &&
        movement.productId === product.id &&
        movement.on <= day &&
        (movement.on > count.on || (movement.on === count.on && place > count.place)),
    )
    .toSorted((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0))

const notBelowNothing = (left: Estimate<'L'>): Outcome<Estimate<'L'>> => {
  const low = Math.max(0, left.low)
  return { ok: true, value: { ...left, value: Math.max(0, left.value), low, high: Math.max(low, left.high) } }
}
