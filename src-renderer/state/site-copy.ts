import type { SiteFile } from '#core/documents/site-schema'
import type { Instrument, Product, Site } from '#core/records/index'

/** A site file made from what this window holds, for when the host cannot make one. */
export function siteCopy(
  site: Site,
  products: readonly Product[],
  instruments: readonly Instrument[],
): { readonly fileName: string; readonly text: string } {
  const productIds = new Set([
    ...site.machines.flatMap((machine) => machine.pumps.map((pump) => pump.productId)),
    ...site.stock.map((movement) => movement.productId),
  ])
  const instrumentIds = new Set(
    site.visits.flatMap((visit) =>
      visit.work.flatMap((work) =>
        work.steps.flatMap((step) => (step.kind === 'test' ? [step.instrumentId] : [])),
      ),
    ),
  )
  const file: SiteFile = {
    format: 'dosewright-site',
    version: 1,
    site,
    products: products.filter((product) => productIds.has(product.id)),
    instruments: instruments.filter((instrument) => instrumentIds.has(instrument.id)),
  }
  return { fileName: `${fileNameOf(site.name)}.json`, text: `${JSON.stringify(file, null, 2)}\n` }
}

const fileNameOf = (name: string): string =>
  name
    .normalize('NFKD')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/gu, '')
    .slice(0, 60)
    .toLowerCase() || 'site'
