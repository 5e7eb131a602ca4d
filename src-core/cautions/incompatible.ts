import type { Hazard, Product, Site } from '../records'
import type { IncompatiblePartner } from './types'

/**
 * A product's hazards, with those that follow from what it is even where nobody ticked them: a delimer is taken for an
 * acid and corrosive, a rinse aid for an acid, which most are, unless its label says alkaline, a detergent for corrosive, available chlorine for chlorine, quat and iodine for what they are.
 * Too many cautions are the smaller mistake.
 */
export function hazardsOf(product: Product): ReadonlySet<Hazard> {
  const hazards = new Set<Hazard>(product.hazards)
  if (product.role === 'delimer') hazards.add('acid').add('corrosive')
  if (product.role === 'rinse-aid' && !hazards.has('alkaline')) hazards.add('acid')
  if (product.role === 'detergent') hazards.add('corrosive')
  if (product.strength.kind === 'trade-percent') hazards.add('chlorine')
  if (product.strength.kind === 'weight-percent') {
    if (product.strength.active === 'available-chlorine') hazards.add('chlorine')
    if (product.strength.active === 'quat') hazards.add('ammonia-or-quat')
    if (product.strength.active === 'iodine') hazards.add('iodine')
  }
  return hazards
}

/** Products a site has: at a pump, or in its stock. In the order of the library. */
export function productsOnSite(
  site: Pick<Site, 'machines' | 'stock'>,
  products: readonly Product[],
): readonly Product[] {
  const ids = new Set<string>(site.stock.map((movement) => movement.productId))
  for (const machine of site.machines)
    for (const pump of machine.pumps) if (pump.productId !== null) ids.add(pump.productId)
  return products.filter((product) => ids.has(product.id))
}

/**
 * What two products give off when they meet: acid frees chlorine from a chlorine product, ammonia and amines make
 * chloramines. Null when no rule of this short list forbids it, which does not say that they may be mixed.
 */
export function releases(a: Product, b: Product): IncompatiblePartner['releases'] | null {
  const first = hazardsOf(a)
  const second = hazardsOf(b)
  const meets = (x: Hazard, y: Hazard): boolean =>
    (first.has(x) && second.has(y)) || (first.has(y) && second.has(x))
  if (meets('chlorine', 'acid')) return 'chlorine-gas'
  if (meets('chlorine', 'ammonia-or-quat')) return 'chloramine-gas'
  return null
}

/** The products among `others` that must not meet `product`. */
export function partnersOf(product: Product, others: readonly Product[]): readonly IncompatiblePartner[] {
  return others.flatMap((other) => {
    if (other.id === product.id) return []
    const gas = releases(product, other)
    return gas === null ? [] : [{ productId: other.id, name: other.name, releases: gas }]
  })
}
