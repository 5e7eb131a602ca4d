import type { Product, Pump, Scenario, Site } from '../records'
import { cautionsFor } from './cautions-for'
import type { Caution, CautionRequest } from './types'

/**
 * Whether a product may be thought of for a pump: it does the pump's work, or one of the two has no role of its own. A
 * rinse aid is never proposed where a detergent is fed. Common practice, no source.
 */
export const suits = (pump: Pick<Pump, 'role'>, product: Pick<Product, 'role'>): boolean =>
  product.role === pump.role || product.role === 'other' || pump.role === 'other'

/** The products that suit a pump: those of its role first, each part in the order of the library. */
export function productsFor(pump: Pick<Pump, 'role'>, products: readonly Product[]): readonly Product[] {
  const suiting = products.filter((product) => suits(pump, product))
  return [
    ...suiting.filter((product) => product.role === pump.role),
    ...suiting.filter((product) => product.role !== pump.role),
  ]
}

/**
 * What a planned change of products would bring together: the caution of each new product against all that is on the
 * site today, what it replaces included, as some of that is still in the tube, and against what the plan puts at other
 * pumps. Empty: no rule of the short list forbids it, which does not say that they may be mixed.
 */
export function cautionsOfPlan(
  site: CautionRequest['site'],
  products: readonly Product[],
  plan: Pick<Scenario, 'changes'>,
  texts: CautionRequest['texts'] = [],
): readonly Caution[] {
  const planned = new Map(plan.changes.map(({ pumpId, productId }) => [pumpId, productId]))
  const both = { stock: site.stock, machines: site.machines.map((machine) => withPlanned(machine, planned)) }
  const pumps = site.machines.flatMap(({ pumps }) => pumps)
  const fresh = new Set(
    pumps.flatMap((pump) => {
      const wanted = planned.get(pump.id) ?? null
      return wanted === null || wanted === pump.productId ? [] : [wanted]
    }),
  )
  return [...fresh].flatMap((productId) =>
    products.some(({ id }) => id === productId)
      ? cautionsFor({ site: both, products, trigger: 'tube-moved', productId, texts }).filter(
          ({ id }) => id === 'never-mix',
        )
      : [],
  )
}

/** A machine with its pumps as they are, and once more as they are planned. */
const withPlanned = (
  machine: Site['machines'][number],
  planned: ReadonlyMap<string, string | null>,
): Site['machines'][number] => ({
  ...machine,
  pumps: [
    ...machine.pumps,
    ...machine.pumps.map((pump) => ({ ...pump, productId: planned.get(pump.id) ?? pump.productId })),
  ],
})
