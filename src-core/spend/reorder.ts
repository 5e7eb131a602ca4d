import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { CurrencyCode, Day, Id, Product } from '../records'
import type { Estimate } from '../statistics/estimate'
import { addDays } from '../units/days'
import type { Decimal } from '../units/decimal'
import { roundMoney } from '../units/money'
import { readNumber } from '../units/read'
import { daysUntil, type UseAhead } from './ahead'
import { DAYS_PER_MONTH } from './calendar'
import { containerOf } from './container'
import { priceOn } from './price'
import { reorderPoint, type ReorderPoint } from './reorder-point'

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
  /** litres to be used from today on, as the calendar has it */
  readonly ahead: UseAhead
}

export interface Reorder {
  readonly productId: Id
  /** L on the shelf today */
  readonly stock: Estimate<'L'>
  /** L a day between order and delivery */
  readonly perDay: number
  readonly daysOfCover: number
  readonly runsOutOn: Day
  readonly leadDays: number
  readonly safetyStock: number
  readonly reorderPoint: number
  readonly orderOn: Day
  /** `orderOn` is today: tomorrow, or already, less is left than the reorder point */
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

/** An order without the stock it rests on, whose budget is longer than all the rest: what a list of many orders shows. */
export type PlannedOrder = Omit<Reorder, 'stock'>

// oxlint-disable-next-line eslint/no-unused-vars -- named to be left out
export const plannedOrder = ({ stock: _, ...order }: Reorder): PlannedOrder => order

/**
 * When to order and how many whole containers. The order falls on the last day on which stock is not below the reorder
 * point, with the use of the days from then to delivery; it brings stock up to the reorder point and `coverDays` of use,
 * rounded up to whole containers, at least one, no more than shelf life lets be used up. Closures, seasons and growth
 * count as `ahead` has them.
 * Problems: what stock, use, lead time (`missing` lead time is `number-missing`) or container size lack; `zero-flow`
 * when nothing is used.
 */
export function reorder(input: ReorderInput): Outcome<Reorder> {
  const { product, asOf, ahead } = input
  const lead = readNumber(product.leadTimeDays, 'product.leadTimeDays', { low: 0, high: 365 })
  const service = readNumber(input.serviceLevel, 'settings.serviceLevel', { low: 50, high: 99.99 })
  const size = containerOf(product, asOf, input.currency)
  const life =
    product.shelfLifeDays === null
      ? ok(null)
      : readNumber(product.shelfLifeDays, 'product.shelfLifeDays', { above: 0, high: 36_500 })
  const parts = all([input.stock, input.perMonth, lead, service, size, life])
  return chain(parts, ([stock, perMonth, leadDays, percent, containerLitres, shelfLife]) => {
    const average = perMonth.value / DAYS_PER_MONTH
    if (!(average > 0)) return fail({ code: 'cannot-compute', reason: 'zero-flow' })
    const between = (from: number, to: number): number => ahead(to) - ahead(from)
    const perDayFrom = (day: number): number =>
      leadDays === 0 ? average : between(day, day + leadDays) / leadDays
    const pointOf = (perDay: number): ReorderPoint =>
      reorderPoint({
        perDay,
        perDaySpread: perDay * DAY_SPREAD,
        leadDays,
        leadDaysSpread: leadDays * LEAD_SPREAD,
        perDayDoubt: (perDay / perMonth.value) * perMonth.standard,
        serviceLevel: percent / 100,
      })
    // all its terms go with the use a day
    const perUse = pointOf(average).reorderPoint / average
    const short = (day: number): boolean => stock.value - ahead(day) < perUse * perDayFrom(day)
    const daysOfCover = daysUntil(ahead, stock.value)
    const wait = lastDayBefore(short, Math.floor(daysOfCover))
    const perDay = perDayFrom(wait)
    const point = pointOf(perDay)
    const atOrder = stock.value - ahead(wait)
    const cover = between(wait + leadDays, wait + leadDays + input.coverDays)
    const wanted = Math.max(1, Math.ceil((point.reorderPoint + cover - atOrder) / containerLitres - 1e-9))
    const lasting =
      shelfLife === null
        ? wanted
        : Math.floor((between(wait, wait + shelfLife) - atOrder) / containerLitres + 1e-9)
    const containers = Math.max(1, Math.min(wanted, lasting))
    return ok({
      productId: product.id,
      stock,
      perDay,
      daysOfCover,
      runsOutOn: addDays(asOf, Math.floor(daysOfCover)),
      leadDays,
      safetyStock: point.safetyStock,
      reorderPoint: point.reorderPoint,
      orderOn: addDays(asOf, wait),
      orderNow: wait === 0,
      containers,
      containerLitres,
      cost: chain(priceOn(product, asOf, input.currency), (price) =>
        ok(roundMoney(price.perContainer.times(containers), input.currency)),
      ),
      cappedByShelfLife: containers < wanted,
      containerOutlastsShelfLife: shelfLife !== null && containerLitres / average > shelfLife,
    })
  })
}

/** The last day before the first one that falls short; 0 when today does. */
function lastDayBefore(short: (day: number) => boolean, last: number): number {
  for (let day = 0; day <= last; day += 1) if (short(day)) return Math.max(0, day - 1)
  return last
}
