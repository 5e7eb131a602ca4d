import type { Day, Entry, EntryOf, Id, NumberText, Product, StockMovement } from '#core/records/index'
import { priceOn } from '#core/spend/price'

/** What a person fills in to book a count or a delivery. */
export interface MovementDraft {
  readonly productId: Id | null
  readonly on: Day | null
  readonly fullContainers: NumberText | null
  readonly containerSize: EntryOf<'volume'> | null
  readonly part: Entry<'L' | 'mL' | 'gal-us' | 'gal-imp' | 'kg' | 'g' | 'lb'> | null
  readonly tare: EntryOf<'mass'> | null
  readonly reference: string
}

/** The container a product comes in, as known on a day: of its price, else its own. */
export function usualSize(product: Product, day: Day, currency: string): EntryOf<'volume'> | null {
  const price = priceOn(product, day, currency)
  if (!price.ok) return product.containerSize
  const row = product.prices.findLast(
    (one) => one.from === price.value.from && one.currency === price.value.currency,
  )
  return row?.containerSize ?? product.containerSize
}

export type DraftFault = 'product' | 'day' | 'future' | 'full' | 'size' | 'tare'

/** What still stands in the way of booking. */
export function draftFaults(
  kind: StockMovement['kind'],
  draft: MovementDraft,
  today: Day,
): readonly DraftFault[] {
  const faults: DraftFault[] = []
  if (draft.productId === null) faults.push('product')
  if (draft.on === null) faults.push('day')
  else if (draft.on > today) faults.push('future')
  if (draft.fullContainers === null || !/^\d{1,5}$/u.test(draft.fullContainers)) faults.push('full')
  else if (kind === 'delivery' && Number(draft.fullContainers) === 0) faults.push('full')
  if (draft.containerSize === null || !(Number(draft.containerSize.value) > 0)) faults.push('size')
  if (kind === 'count' && isWeighed(draft.part) && draft.tare === null) faults.push('tare')
  return faults
}

export const isWeighed = (part: Entry | null): boolean =>
  part !== null && ['kg', 'g', 'lb'].includes(part.unit)

/** The record of a draft without faults; null while it has some. */
export function movementOf(
  kind: StockMovement['kind'],
  draft: MovementDraft,
  id: Id,
  today: Day,
): StockMovement | null {
  const { productId, on, fullContainers, containerSize } = draft
  if (draftFaults(kind, draft, today).length > 0) return null
  if (productId === null || on === null || fullContainers === null || containerSize === null) return null
  const counted = kind === 'count'
  return {
    id,
    on,
    productId,
    kind,
    fullContainers,
    containerSize,
    part: counted ? draft.part : null,
    tare: counted && isWeighed(draft.part) ? draft.tare : null,
    reference: draft.reference.trim(),
    visitId: null,
  }
}
