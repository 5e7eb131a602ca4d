import type { Day, Entry, Id, NumberText, Product, Site, StockMovement } from '#core/records/index'
import { replaceOne, without, type AtVisit } from './open-visit'

export interface CountInput extends AtVisit {
  readonly id: Id
  readonly on: Day
  readonly product: Product
  readonly fullContainers: NumberText | null
  readonly part: Entry | null
}

/** The count of a product made at this visit, if any. */
export const countOf = (site: Site, visitId: Id, productId: Id): StockMovement | undefined =>
  site.stock.find((row) => row.visitId === visitId && row.productId === productId && row.kind === 'count')

/**
 * Writes what was counted of a product at this visit; one count per product and visit, taken out again when nothing
 * is entered. Without a container size a count means nothing, and is not written.
 */
export function countStock(site: Site, input: CountInput): Site {
  const open = site.visits.some((visit) => visit.id === input.visitId && visit.closing === null)
  const size = input.product.containerSize
  if (!open || size === null) return site
  const known = countOf(site, input.visitId, input.product.id)
  if (input.fullContainers === null && input.part === null) {
    const stock = without(site.stock, (row) => row === known)
    return stock === site.stock ? site : { ...site, stock }
  }
  const counted = { fullContainers: input.fullContainers ?? '0', part: input.part }
  if (known !== undefined)
    return {
      ...site,
      stock: replaceOne(
        site.stock,
        (row) => row === known,
        (row) => ({ ...row, ...counted }),
      ),
    }
  const movement: StockMovement = {
    id: input.id,
    on: input.on,
    productId: input.product.id,
    kind: 'count',
    containerSize: size,
    tare: null,
    reference: '',
    visitId: input.visitId,
    ...counted,
  }
  return { ...site, stock: [...site.stock, movement] }
}
