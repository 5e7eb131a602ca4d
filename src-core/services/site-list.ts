import type { Output, Services, SiteRow } from '../contract/contract'
import type { DocumentStore, Ports } from '../contract/ports'
import { chain, ok, type Outcome } from '../outcome'
import { findSites, inOrder } from './find-sites'
import { openWhole } from './library'

/** All sites as they were at one moment, in their order. */
interface Listing {
  readonly version: string
  readonly rows: readonly SiteRow[]
  readonly readable: number
  readonly waiting: number
}

/** The list of sites as a window shows it. What was listed last is kept, so that a key typed only looks through names. */
export function siteListServices({
  documents,
  ids,
  portfolio,
}: Ports): Pick<Services, 'sites.view' | 'sites.outlooks'> {
  let kept: Listing | null = null
  return {
    'sites.view': async ({ words, locale, version, from, count }) => {
      const listing: Outcome<Listing> =
        kept !== null && kept.version === version ? ok(kept) : await list(documents, ids.next(), locale)
      return chain(listing, (all) => {
        kept = all
        return ok(sliced(all, findSites(all.rows, words), from, count))
      })
    },
    'sites.outlooks': async ({ ids: wanted }) => {
      const library = await openWhole(documents)
      return library.ok ? ok({ outlooks: await portfolio.outlooks(wanted, library.value) }) : library
    },
  }
}

const sliced = (
  { version, rows, readable, waiting }: Listing,
  found: readonly SiteRow[],
  from: number,
  count: number,
): Output<'sites.view'> => ({
  version,
  sites: rows.length,
  readable,
  waiting,
  total: found.length,
  rows: found.slice(from, from + count),
})

async function list(documents: DocumentStore, version: string, locale: string): Promise<Outcome<Listing>> {
  return chain(await documents.listSites(), (listed) => {
    const sites = listed.filter((one) => one.state !== 'waiting')
    return ok({
      version,
      rows: inOrder(sites, locale),
      readable: sites.filter((one) => one.state === 'good').length,
      waiting: listed.length - sites.length,
    })
  })
}
