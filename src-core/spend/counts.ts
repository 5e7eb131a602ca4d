import { ok, type Outcome } from '../outcome'
import type { Day, Product, StockMovement } from '../records'
import { Decimal } from '../units/decimal'
import { stocked, type Stocked } from './stock'

/** One stock count of one product. */
export interface StockCount {
  readonly on: Day
  readonly level: Outcome<Stocked>
  /** its place among the movements, for what else happened that day */
  readonly place: number
}

/** Counts of a product in order of day. Counted again on one day, the later count holds. */
export function countsOf(movements: readonly StockMovement[], product: Product): readonly StockCount[] {
  const byDay = new Map<Day, StockCount>()
  for (const [place, movement] of movements.entries())
    if (movement.productId === product.id && movement.kind === 'count')
      byDay.set(movement.on, { on: movement.on, level: stocked(movement, product), place })
  return [...byDay.values()].sort((a, b) => (a.on < b.on ? -1 : 1))
}

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
