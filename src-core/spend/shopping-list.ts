import type { CurrencyCode, Day, Id } from '../records'
import { Decimal } from '../units/decimal'
import type { PortfolioRow } from './portfolio'
import type { Tally } from './portfolio-totals'
import type { PlannedOrder } from './reorder'

export interface ShoppingLine {
  readonly siteId: Id
  readonly siteName: string
  readonly currency: CurrencyCode
  readonly product: string
  readonly reorder: PlannedOrder
}

export interface ShoppingGroup extends GroupKey {
  readonly product: string
  readonly containers: number
  /** the sum of the lines that have a price */
  readonly cost: Decimal
  readonly withoutPrice: number
  /** most urgent first */
  readonly lines: readonly ShoppingLine[]
}

/** What tells one group from another. */
export interface GroupKey {
  readonly productId: Id
  readonly containerLitres: number
  readonly currency: CurrencyCode
}

export const isGroup = (group: ShoppingGroup, key: GroupKey): boolean =>
  group.productId === key.productId &&
  group.containerLitres === key.containerLitres &&
  group.currency === key.currency

/**
 * What is to be ordered up to a day, over all sites: by product, container size and currency, the most urgent first.
 */
export function shoppingList(rows: readonly PortfolioRow[], until: Day): readonly ShoppingGroup[] {
  const tally = shoppingTally(until)
  for (const row of rows) tally.add(row)
  return tally.total()
}

/** The same, row after row. */
export function shoppingTally(until: Day): Tally<readonly ShoppingGroup[]> {
  const groups = new Map<string, ShoppingLine[]>()
  return {
    add: (row) => {
      for (const { name, reorder } of row.products) {
        if (reorder === null || reorder.orderOn > until) continue
        const line = {
          siteId: row.siteId,
          siteName: row.name,
          currency: row.currency,
          product: name,
          reorder,
        }
        const key = JSON.stringify([reorder.productId, reorder.containerLitres, row.currency])
        const group = groups.get(key)
        if (group === undefined) groups.set(key, [line])
        else group.push(line)
      }
    },
    total: () =>
      [...groups.values()]
        .map((group) => group.sort(byUrgency))
        .flatMap((group) => groupOf(group) ?? [])
        .sort((a, b) =>
          a.lines[0] === undefined || b.lines[0] === undefined ? 0 : byUrgency(a.lines[0], b.lines[0]),
        ),
  }
}

/** What the groups cost in each currency, in the order they were met: money of two currencies is never added. */
export function orderTotals(
  groups: readonly Pick<ShoppingGroup, 'currency' | 'cost' | 'withoutPrice'>[],
): readonly { readonly currency: CurrencyCode; readonly cost: Decimal; readonly withoutPrice: number }[] {
  const totals = new Map<CurrencyCode, { readonly cost: Decimal; readonly withoutPrice: number }>()
  for (const { currency, cost, withoutPrice } of groups) {
    const before = totals.get(currency)
    totals.set(currency, {
      cost: cost.plus(before?.cost ?? 0),
      withoutPrice: withoutPrice + (before?.withoutPrice ?? 0),
    })
  }
  return [...totals].map(([currency, total]) => ({ currency, ...total }))
}

const byUrgency = (a: ShoppingLine, b: ShoppingLine): number =>
  a.reorder.orderOn < b.reorder.orderOn
    ? -1
    : a.reorder.orderOn > b.reorder.orderOn
      ? 1
      : a.reorder.daysOfCover - b.reorder.daysOfCover

function groupOf(lines: readonly ShoppingLine[]): ShoppingGroup | null {
  const first = lines[0]
  if (first === undefined) return null
  const costs = lines.map((line) => line.reorder.cost)
  return {
    productId: first.reorder.productId,
    product: first.product,
    containerLitres: first.reorder.containerLitres,
    currency: first.currency,
    containers: lines.reduce((sum, line) => sum + line.reorder.containers, 0),
    cost: costs.reduce((sum, cost) => (cost.ok ? sum.plus(cost.value) : sum), new Decimal(0)),
    withoutPrice: costs.filter((cost) => !cost.ok).length,
    lines,
  }
}
