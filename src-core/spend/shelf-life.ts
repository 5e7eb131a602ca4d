import { all, chain, ok, type Outcome } from '../outcome'
import type { Day, Product, StockMovement } from '../records'
import { addDays } from '../units/days'
import { readNumber } from '../units/read'
import { daysUntil, type UseAhead } from './ahead'
import { stocked } from './stock'

/** Product on the shelf that is not used up while it keeps. */
export interface Outlasting {
  readonly deliveredOn: Day
  readonly keepsUntil: Day
  readonly usedUpOn: Day
  /** it is past its time already */
  readonly past: boolean
}

/**
 * The oldest delivery on the shelf that is not used up within the product's shelf life, when the oldest is used first;
 * null when all is, or when the product has no shelf life. What is on the shelf is taken to be what came last; what was
 * there before the first delivery booked is of unknown age and left out. `litres`: on the shelf today.
 * Problem: a shelf life or a delivery that does not read.
 */
export function outlasting(
  product: Product,
  movements: readonly StockMovement[],
  litres: number,
  ahead: UseAhead,
  asOf: Day,
): Outcome<Outlasting | null> {
  if (product.shelfLifeDays === null) return ok(null)
  const life = readNumber(product.shelfLifeDays, 'product.shelfLifeDays', { above: 0, high: 36_500 })
  const came = movements
    .filter((one) => one.kind === 'delivery' && one.productId === product.id && one.on <= asOf)
    .toSorted((a, b) => (a.on < b.on ? 1 : a.on > b.on ? -1 : 0))
  const lots = all(
    came.map((one) => chain(stocked(one, product), (level) => ok({ on: one.on, litres: level.litres }))),
  )
  return chain(all([life, lots]), ([days, newestFirst]) => {
    let worst: Outlasting | null = null
    let newer = 0
    for (const lot of newestFirst) {
      if (newer >= litres) break
      // of a shelf used oldest first, this lot is gone when all but the newer ones is
      const usedUpOn = addDays(asOf, Math.floor(daysUntil(ahead, litres - newer)))
      const keepsUntil = addDays(lot.on, Math.floor(days))
      if (usedUpOn > keepsUntil)
        worst = { deliveredOn: lot.on, keepsUntil, usedUpOn, past: keepsUntil < asOf }
      newer += lot.litres.toNumber()
    }
    return ok(worst)
  })
}
