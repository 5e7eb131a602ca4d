import type { Id, Instrument, Product, Site } from '../records'

/** The products and instruments a site names anywhere, so that its file can be read without the library. */
export function usedLibrary(
  site: Site,
  products: readonly Product[],
  instruments: readonly Instrument[],
): { readonly products: readonly Product[]; readonly instruments: readonly Instrument[] } {
  const used = new Set<Id | null>()
  for (const machine of site.machines) for (const pump of machine.pumps) used.add(pump.productId)
  for (const movement of site.stock) used.add(movement.productId)
  for (const scenario of site.scenarios) for (const change of scenario.changes) used.add(change.productId)
  for (const visit of site.visits) {
    for (const caution of visit.cautions) used.add(caution.productId)
    for (const work of visit.work) {
      for (const step of work.steps) if (step.kind === 'test') used.add(step.instrumentId)
      for (const verification of work.verifications) used.add(verification.instrumentId)
    }
  }
  return {
    products: products.filter(({ id }) => used.has(id)),
    instruments: instruments.filter(({ id }) => used.has(id)),
  }
}
