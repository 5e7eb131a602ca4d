import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { Day, Id, Product } from '../records'
import type { Estimate } from '../statistics/estimate'
import { scale, sum } from '../statistics/propagate'
import type { Decimal } from '../units/decimal'
import { roundMoney } from '../units/money'
import { addMonths, monthDays, monthOf, type Month } from './months'
import { productCost, productLitres, type SiteInTime } from './product-over'
import { sumOf } from './site-use'

export interface MonthLine {
  readonly productId: Id
  readonly litres: Outcome<Estimate<'L'>>
  /** rounded: one line of that month's bill */
  readonly cost: Outcome<Decimal>
}

/** One calendar month: what was used, or will be at today's settings. */
export interface MonthRow {
  readonly month: Month
  readonly kind: 'past' | 'current' | 'coming'
  readonly lines: readonly MonthLine[]
  /** the sum of the rounded lines that are known */
  readonly cost: Decimal
  readonly unknownLines: number
  /** that sum with its interval; the racks are shared by all lines */
  readonly costEstimate: Outcome<Estimate<'money/month'>>
}

/**
 * Calendar months around today, oldest first: the past at the settings and prices of their days, the coming ones at
 * today's settings and the prices known to come. A month that began before the first test has no lines known.
 */
export const monthsOf = (inTime: SiteInTime, products: readonly Product[], asOf: Day): readonly MonthRow[] =>
  monthsAround(asOf).map(({ month, kind }) => monthRow(inTime, products, month, kind))

/** The money of the same months, without litres and intervals: what a portfolio adds up. */
export const monthCosts = (
  inTime: SiteInTime,
  products: readonly Product[],
  asOf: Day,
): readonly Pick<MonthRow, 'month' | 'cost' | 'unknownLines'>[] =>
  monthsAround(asOf).map(({ month }) => {
    const { from, to } = monthDays(month)
    const costs = products.map((product) => lineCost(inTime, product, from, to))
    const known = costs.flatMap((cost) => (cost.ok ? [cost.value] : []))
    return { month, cost: sumOf(known), unknownLines: costs.length - known.length }
  })

const BACK = 12
const AHEAD = 12

function monthsAround(asOf: Day): readonly { readonly month: Month; readonly kind: MonthRow['kind'] }[] {
  const current = monthOf(asOf)
  return Array.from({ length: BACK + 1 + AHEAD }, (_, index) => ({
    month: addMonths(current, index - BACK),
    kind: index < BACK ? 'past' : index === BACK ? 'current' : 'coming',
  }))
}

const lineCost = (inTime: SiteInTime, product: Product, from: number, to: number): Outcome<Decimal> =>
  chain(productCost(inTime, product, from, to), (money) => ok(roundMoney(money, inTime.site.currency)))

function monthRow(
  inTime: SiteInTime,
  products: readonly Product[],
  month: Month,
  kind: MonthRow['kind'],
): MonthRow {
  const { from, to } = monthDays(month)
  const lines = products.map((product): MonthLine => {
    return {
      productId: product.id,
      litres: productLitres(inTime, product, from, to),
      cost: lineCost(inTime, product, from, to),
    }
  })
  const known = lines.flatMap((line) => (line.cost.ok ? [line.cost.value] : []))
  const estimates = all(lines.filter((line) => line.cost.ok).map(moneyOf))
  return {
    month,
    kind,
    lines,
    cost: sumOf(known),
    unknownLines: lines.length - known.length,
    costEstimate:
      known.length === 0
        ? fail({ code: 'no-runs' })
        : chain(estimates, (parts) => sum(parts, 'money/month', { shared: ['racks', 'rinse-volume'] })),
  }
}

const moneyOf = (line: MonthLine): Outcome<Estimate<'money/month'>> =>
  chain(all([line.litres, line.cost]), ([litres, cost]) =>
    scale(litres, litres.value === 0 ? 0 : cost.toNumber() / litres.value, 'money/month'),
  )
