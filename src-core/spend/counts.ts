import { chain, ok, type Outcome } from '../outcome'
import type { Day, Product, StockMovement } from '../records'
import { Decimal } from '../units/decimal'
import { stocked, type Stocked } from './stock'

/** One stock count of one product: all its rows of one day. */
export interface StockCount {
  readonly on: Day
  readonly level: Outcome<Stocked>
  /** place of its last row among the movements, for what else happened that day */
  readonly place: number
}

/** Counts of a product in order of day, the rows of a day put together. */
export function countsOf(movements: readonly StockMovement[], product: Product): readonly StockCount[] {
  const byDay = new Map<Day, { level: Outcome<Stocked>; place: number }>()
  movements.forEach((movement, place) => {
    if (movement.productId !== product.id || movement.kind !== 'count') return
    const level = stocked(movement, product)
    const before = byDay.get(movement.on)
    byDay.set(movement.on, { level: before === undefined ? level : together(before.level, level), place })
  })
  return [...byDay].map(([on, row]) => ({ on, ...row })).sort((a, b) => (a.on < b.on ? -1 : 1))
}

const together = (a: Outcome<Stocked>, b: Outcome<Stocked>): Outcome<Stocked> =>
  chain(a, (first) =>
    chain(b, (second) =>
      ok({
        litres: first.litres.plus(second.litres),
        standard: Math.hypot(first.standard, second.standard),
        partUnknown: first.partUnknown && second.partUnknown,
      }),
    ),
  )

/**
 * Litres delivered after one count and up to another (or up to now, `until` null). On the day of a count the order of
 * the movements decides.
 */
export function deliveredBetween(
  movements: readonly StockMovement[],
  product: Product,
  after: StockCount,
  until: StockCount | { readonly on: Day; readonly place: number },
): Outcome<Decimal> {
  let total = new Decimal(0)
  for (const [place, movement] of movements.entries()) {
    if (movement.productId !== product.id || movement.kind !== 'delivery') continue
    const begun = movement.on > after.on || (movement.on === after.on && place > after.place)
    const ended = movement.on > until.on || (movement.on === until.on && place > until.place)
    if (!begun || ended) continue
    const level = stocked(movement, product)
    if (!level.ok) return level
    total = total.plus(level.value.litres)
  }
  return ok(total)
}
