import type { Id, Product, Scenario } from '#core/records/index'
import { priceOn } from '#core/spend/price'
import { reprice } from '#core/spend/reprice'
import type { ScenarioResult } from '#core/spend/scenario'
import type { PumpUse } from '#core/spend/types'
import type { Decimal } from '#core/units/decimal'
import { formatEntry } from '#core/units/format'
import { pumpChange } from '../../../commands/scenarios'
import type { SpendDesk } from '../spend-desk.svelte'
import { usualSize } from '../new-movement'

export interface QuoteSide {
  /** product, container, price */
  readonly words: string
  readonly use: PumpUse
}

export interface QuoteLine {
  readonly pumpId: Id
  readonly name: string
  readonly today: QuoteSide
  readonly proposed: QuoteSide
  readonly change: Decimal | null
}

/** The lines of a quote, pump by pump. */
export const quoteLines = (
  desk: SpendDesk,
  scenario: Scenario,
  result: ScenarioResult,
): readonly QuoteLine[] =>
  result.lines.map((line) => {
    const pump = desk.pump(line.pumpId)?.pump
    const now = desk.product(pump?.productId ?? null)
    const change = pumpChange(scenario, line.pumpId)
    const base = desk.product(change.productId ?? pump?.productId ?? null)
    const changed = base === null ? null : reprice(base, change, desk.session.today, desk.currency)
    return {
      pumpId: line.pumpId,
      name: pump?.name ?? 'Pump',
      today: { words: productWords(desk, now), use: line.today },
      proposed: { words: productWords(desk, changed?.ok === true ? changed.value : base), use: line.changed },
      change: line.change.ok ? line.change.value : null,
    }
  })

function productWords(desk: SpendDesk, product: Product | null): string {
  if (product === null) return 'no product'
  const { today } = desk.session
  const size = usualSize(product, today, desk.currency)
  const price = priceOn(product, today, desk.currency)
  return [
    product.name,
    // many a product has its container in its name
    ...(size === null || product.name.includes(formatEntry(size, desk.sign))
      ? []
      : [formatEntry(size, desk.sign)]),
    ...(price.ok ? [desk.money(price.value.perContainer)] : ['no price']),
  ].join(', ')
}
