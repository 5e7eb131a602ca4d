import type { Product, Site, StockMovement } from '#core/records/index'
import { formatEntry } from '#core/units/format'
import type { DecimalSign } from '#core/units/parse'

export interface StockFact {
  readonly productId: string
  readonly name: string
  readonly on: string
  readonly words: string
}

/** The last count of every product the pumps dose, in words. Products never counted are left out. */
export function stockFacts(
  site: Site,
  products: readonly Product[],
  sign: DecimalSign,
): readonly StockFact[] {
  const dosed = new Set(site.machines.flatMap((machine) => machine.pumps.map((pump) => pump.productId)))
  return products
    .filter((product) => dosed.has(product.id))
    .flatMap((product) => {
      const count = site.stock
        .filter((movement) => movement.productId === product.id && movement.kind === 'count')
        .toSorted((a, b) => (a.on < b.on ? -1 : 1))
        .at(-1)
      return count === undefined
        ? []
        : [{ productId: product.id, name: product.name, on: count.on, words: countWords(count, sign) }]
    })
}

function countWords(count: StockMovement, sign: DecimalSign): string {
  const full = `${count.fullContainers} × ${formatEntry(count.containerSize, sign)}`
  return count.part === null ? full : `${full} and ${formatEntry(count.part, sign)}`
}
