import type { Arrived, Settled, Settling, Weighed } from '../contract/ports'
import { compareSites } from '../documents/compare-sites'
import { check, decode } from '../documents/decode'
import { byContent, first, mergeSites, second } from '../documents/merge'
import { same } from '../documents/same'
import { site as siteSchema, type SiteFile } from '../documents/site-schema'
import { summarizeSite } from '../documents/summarize-site'
import { chain, fail, ok, type Outcome } from '../outcome'
import type { Site } from '../records'
import { siteDocument } from './site-document'

/** A site file read and weighed right here: what any host can do, and what a thread of its own does as well. */
export const readHere = (text: string): Outcome<Arrived> =>
  chain(decode('site', text), ({ document }) => ok(arrivedHere(document)))

export const arrivedHere = (file: SiteFile): Arrived => ({
  id: file.site.id,
  name: file.site.name,
  products: file.products,
  instruments: file.instruments,
  compare: async (mine) => ok(weigh(file, mine)),
  settle: async (mine, how) => settle(file, mine, how),
  done: () => {},
})

/** The site of a file against the one here. */
export function weigh(file: SiteFile, mine: Site | null): Weighed {
  return {
    state: mine === null ? 'new' : same(mine, file.site) ? 'same' : 'differs',
    mine: mine === null ? null : summarizeSite(mine),
    theirs: summarizeSite(file.site),
    differences: mine === null ? [] : compareSites(mine, file.site),
  }
}

/** What is to be written when the file comes in as told, checked as a whole. Nothing is written here. */
export function settle(file: SiteFile, mine: Site | null, how: Settling): Outcome<Settled> {
  if (mine !== null && how.choice === 'merge' && how.prefer === undefined && asks(mine, file.site))
    return fail({
      code: 'bad-request',
      place: 'prefer',
      reason: 'is needed, because both sides changed the same thing',
    })
  const site = mine === null ? file.site : resolve(mine, file.site, how)
  return chain(check({ schema: siteSchema }, site), (checked) =>
    ok({
      id: checked.id,
      name: checked.name,
      unchanged: mine !== null && site.id === file.site.id && same(site, mine),
      document: siteDocument(checked),
    }),
  )
}

const asks = (mine: Site, theirs: Site): boolean => compareSites(mine, theirs).some((part) => part.asks)

function resolve(mine: Site, theirs: Site, { choice, prefer, freshId }: Settling): Site {
  switch (choice) {
    case 'take-theirs':
      return theirs
    case 'keep-both':
      return { ...theirs, id: freshId, name: `${theirs.name.slice(0, 190)} (copy)` }
    case 'merge':
      return mergeSites(mine, theirs, prefer === undefined ? byContent : prefer === 'mine' ? first : second)
    default:
      return mine
  }
}
