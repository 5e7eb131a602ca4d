import type { SiteFile } from '#core/documents/site-schema'
import { usedLibrary } from '#core/documents/used-library'
import type { Instrument, Product, Site } from '#core/records/index'

/** A site file made from what this window holds, for when the host cannot make one. */
export function siteCopy(
  site: Site,
  products: readonly Product[],
  instruments: readonly Instrument[],
): { readonly fileName: string; readonly text: string } {
  const file: SiteFile = {
    format: 'dosewright-site',
    version: 2,
    site,
    ...usedLibrary(site, products, instruments),
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
