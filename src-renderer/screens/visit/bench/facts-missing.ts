import { heldByProbe } from '#core/dose/held-by-probe'
import type { Machine, Product, Pump } from '#core/records/index'

export type Fact = 'product' | 'seconds per rack' | 'target' | 'rinse water' | 'density' | 'strength'

/** What stands between a flow and a decision on the window's basis, in the order it is asked for. */
export function factsMissing(
  pump: Pick<Pump, 'productId' | 'doseSeconds' | 'window' | 'control' | 'feeds'>,
  machine: Pick<Machine, 'rinse'>,
  product: Pick<Product, 'density' | 'strength'> | null,
): readonly Fact[] {
  const basis = pump.window?.basis ?? null
  const perWater = basis !== null && basis !== 'mL-per-rack'
  const byMass = basis === 'mg-per-L-product' || basis === 'g-per-L-tank'
  const facts: readonly (readonly [Fact, boolean])[] = [
    ['product', product === null],
    ['seconds per rack', pump.doseSeconds === null && !heldByProbe(pump)],
    ['target', pump.window === null],
    ['rinse water', perWater && machine.rinse === null],
    ['density', byMass && product !== null && product.density === null],
    ['strength', basis === 'mg-per-L-active' && product !== null && product.strength.kind === 'none'],
  ]
  return facts.filter(([, missing]) => missing).map(([fact]) => fact)
}
