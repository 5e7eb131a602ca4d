import type { Hazard, Product, Site } from '../records'
import type { IncompatiblePartner } from './types'

/** What a hazard was taken from where nobody ticked it. */
export type HazardGround = 'strength' | 'role'

/**
 * Hazards that follow from what a product is, ticked or not: a delimer is taken for an acid and corrosive, a rinse aid
 * for an acid, which most are, unless its label says alkaline, a detergent for corrosive, available chlorine for
 * chlorine, quat and iodine for what they are. Too many cautions are the smaller mistake.
 */
export function hazardsThatFollow(
  product: Pick<Product, 'role' | 'strength' | 'hazards'>,
): ReadonlyMap<Hazard, HazardGround> {
  const hazards = new Map<Hazard, HazardGround>()
  if (product.role === 'delimer') hazards.set('acid', 'role').set('corrosive', 'role')
  if (product.role === 'rinse-aid' && !product.hazards.includes('alkaline')) hazards.set('acid', 'role')
  if (product.role === 'detergent') hazards.set('corrosive', 'role')
  if (product.strength.kind === 'trade-percent') hazards.set('chlorine', 'strength')
  if (product.strength.kind === 'weight-percent') {
    if (product.strength.active === 'available-chlorine') hazards.set('chlorine', 'strength')
    if (product.strength.active === 'quat') hazards.set('ammonia-or-quat', 'strength')
    if (product.strength.active === 'iodine') hazards.set('iodine', 'strength')
  }
  return hazards
}

/** A product's hazards: those ticked, and those that follow from what it is. */
export const hazardsOf = (product: Product): ReadonlySet<Hazard> =>
  new Set<Hazard>([...product.hazards, ...hazardsThatFollow(product).keys()])

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
