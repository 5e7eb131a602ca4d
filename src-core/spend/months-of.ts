import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { Day, Id, Product } from '../records'
import type { Estimate } from '../statistics/estimate'
import { scale, sum } from '../statistics/propagate'
import { Decimal } from '../units/decimal'
import { roundMoney } from '../units/money'
import { addMonths, monthDays, monthOf, type Month } from './months'
import { productOver, type SiteInTime } from './product-over'

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
export function monthsOf(
  inTime: SiteInTime,
  products: readonly Product[],
  asOf: Day,
  back = 12,
  ahead = 12,
): readonly MonthRow[] {
  const current = monthOf(asOf)
  return Array.from({ length: back + ahead + 1 }, (_, index) => {
    const month = addMonths(current, index - back)
    return monthRow(inTime, products, month, index < back ? 'past' : index === back ? 'current' : 'coming')
  })
}

function monthRow(
  inTime: SiteInTime,
  products: readonly Product[],
  month: Month,
  kind: MonthRow['kind'],
): MonthRow {
  const { from, to } = monthDays(month)
  const lines = products.map((product): MonthLine => {
    const { litres, cost } = productOver(inTime, product, from, to)
    return {
      productId: product.id,
      litres,
      cost: chain(cost, (money) => ok(roundMoney(money, inTime.site.currency))),
    }
  })
  const known = lines.flatMap((line) => (line.cost.ok ? [line.cost.value] : []))
  const estimates = all(lines.filter((line) => line.cost.ok).map(moneyOf))
  return {
    month,
    kind,
    lines,
    cost: known.reduce((total, cost) => total.plus(cost), new Decimal(0)),
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
