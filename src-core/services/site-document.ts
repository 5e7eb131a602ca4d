import type { DocumentName } from '../contract/ports'
import type { SiteFile } from '../documents/site-schema'
import type { Id, Site } from '../records'

export const siteName = (id: Id): DocumentName & { readonly kind: 'site' } => ({ kind: 'site', id })

/** A site as it lies in the data folder: without products and instruments, which the library documents hold. */
export const siteDocument = (site: Site): SiteFile => ({
  format: 'dosewright-site',
  version: 2,
  site,
  products: [],
  instruments: [],
})
