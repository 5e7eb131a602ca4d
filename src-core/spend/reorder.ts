import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { CurrencyCode, Day, Id, Product } from '../records'
import type { Estimate } from '../statistics/estimate'
import { addDays } from '../units/days'
import type { Decimal } from '../units/decimal'
import { roundMoney } from '../units/money'
import { readNumber } from '../units/read'
import { DAYS_PER_MONTH } from './calendar'
import { containerOf } from './container'
import { priceOn } from './price'
import { reorderPoint } from './reorder-point'

/** Day-to-day spread of use and spread of delivery times, as shares of their means, until better is known. Our judgement. */
export const DAY_SPREAD = 0.3
export const LEAD_SPREAD = 0.2
/** Days an order should last when the site sets no visit interval. Our judgement. */
export const REVIEW_DAYS = 30

export interface ReorderInput {
  readonly product: Product
  readonly currency: CurrencyCode
  readonly asOf: Day
  readonly stock: Outcome<Estimate<'L'>>
  readonly perMonth: Outcome<Estimate<'L/month'>>
  /** percent */
  readonly serviceLevel: string
  readonly coverDays: number
}

export interface Reorder {
  readonly productId: Id
  /** L on the shelf today */
  readonly stock: Estimate<'L'>
  readonly perDay: number
  readonly daysOfCover: number
  readonly runsOutOn: Day
  readonly leadDays: number
  readonly safetyStock: number
  readonly reorderPoint: number
  readonly orderOn: Day
  /** today or earlier */
  readonly orderNow: boolean
  readonly containers: number
  readonly containerLitres: number
  /** of the containers, at today's price */
  readonly cost: Outcome<Decimal>
  /** fewer containers than wanted, because they would outlast the shelf life */
  readonly cappedByShelfLife: boolean
  /** even one container outlasts it: a smaller size is wanted */
  readonly containerOutlastsShelfLife: boolean
}

/** Beyond this a date says nothing. */
const FAR_DAYS = 3650

/**
 * When to order and how many whole containers. Days of cover = stock / daily use. The order falls on the day stock comes
 * down to the reorder point; it brings stock up to the reorder point and `coverDays` of use, rounded up to whole
 * containers, at least one, no more than shelf life lets be used up. Calendar days, average use.
 * Problems: what stock, use, lead time (`missing` lead time is `number-missing`) or container size lack; `zero-flow`
 * when nothing is used.
 */
export function reorder(input: ReorderInput): Outcome<Reorder> {
  const { product, asOf } = input
  const lead = readNumber(product.leadTimeDays, 'product.leadTimeDays', { low: 0, high: 365 })
  const service = readNumber(input.serviceLevel, 'settings.serviceLevel', { low: 50, high: 99.99 })
  const size = containerOf(product, asOf, input.currency)
  const life =
    product.shelfLifeDays === null
      ? ok(null)
      : readNumber(product.shelfLifeDays, 'product.shelfLifeDays', { above: 0, high: 36_500 })
  const parts = all([input.stock, input.perMonth, lead, service, size, life])
  return chain(parts, ([stock, perMonth, leadDays, percent, containerLitres, shelfLife]) => {
    const perDay = perMonth.value / DAYS_PER_MONTH
    if (!(perDay > 0)) return fail({ code: 'cannot-compute', reason: 'zero-flow' })
    const point = reorderPoint({
      perDay,
      perDaySpread: perDay * DAY_SPREAD,
      leadDays,
      leadDaysSpread: leadDays * LEAD_SPREAD,
      perDayDoubt: perMonth.standard / DAYS_PER_MONTH,
      serviceLevel: percent / 100,
    })
    const daysOfCover = stock.value / perDay
    const wait = Math.min(FAR_DAYS, Math.max(0, Math.floor((stock.value - point.reorderPoint) / perDay)))
    const atOrder = stock.value - wait * perDay
    const wanted = Math.max(
      1,
      Math.ceil((point.reorderPoint + perDay * input.coverDays - atOrder) / containerLitres - 1e-9),
    )
    const lasting = shelfLife === null ? wanted : Math.floor((perDay * shelfLife - atOrder) / containerLitres)
    const containers = Math.max(1, Math.min(wanted, lasting))
    return ok({
      productId: product.id,
      stock,
      perDay,
      daysOfCover,
      runsOutOn: addDays(asOf, Math.min(FAR_DAYS, Math.floor(daysOfCover))),
      leadDays,
      safetyStock: point.safetyStock,
      reorderPoint: point.reorderPoint,
      orderOn: addDays(asOf, wait),
      orderNow: stock.value <= point.reorderPoint,
      containers,
      containerLitres,
      cost: chain(priceOn(product, asOf, input.currency), (price) =>
        ok(roundMoney(price.perContainer.times(containers), input.currency)),
      ),
      cappedByShelfLife: containers < wanted,
      containerOutlastsShelfLife: shelfLife !== null && containerLitres / perDay > shelfLife,
    })
  })
}
