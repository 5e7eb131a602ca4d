import type { Output } from '../contract/contract'
import type { Ports } from '../contract/ports'
import { compareSites } from '../documents/compare-sites'
import { check, decode } from '../documents/decode'
import { encode } from '../documents/encode'
import { byContent, first, mergeSites, second } from '../documents/merge'
import { same } from '../documents/same'
import { site as siteSchema, type SiteFile } from '../documents/site-schema'
import { summarizeSite } from '../documents/summarize-site'
import { usedLibrary } from '../documents/used-library'
import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { Site } from '../records'
import { exportFileName } from './file-name'
import { openOrEmpty } from './library'
import type { Service } from './service'
import { siteDocument, siteName } from './site-document'
import { missingFrom, takeLibrary } from './take-library'

/** The site with everything it takes to read it elsewhere. */
export const exportSite: Service<'site.export'> =
  ({ documents }) =>
  async ({ id }) => {
    const opened = await documents.open(siteName(id))
    const products = await openOrEmpty(documents, 'products')
    const instruments = await openOrEmpty(documents, 'instruments')
    return chain(all([opened, products, instruments]), ([stored, p, i]) => {
      const { site } = stored.document
      const used = usedLibrary(site, p.document.products, i.document.instruments)
      return ok({
        fileName: exportFileName(site.name),
        text: encode('site', { ...siteDocument(site), ...used }),
      })
    })
  }

/** What does not stand in the way of a file: nothing there, or only a damaged document, which is kept aside. */
const MAKES_ROOM: ReadonlySet<string> = new Set(['not-found', 'document-damaged'])

export const compareSite: Service<'site.compare'> =
  (ports) =>
  async ({ text }) => {
    const decoded = decode('site', text)
    return decoded.ok ? compareFile(ports, decoded.value.document) : decoded
  }

/** What an import of this file would meet. */
export async function compareFile(
  { documents }: Ports,
  file: SiteFile,
): Promise<Outcome<Output<'site.compare'>>> {
  const opened = await documents.open(siteName(file.site.id))
  if (!opened.ok && !MAKES_ROOM.has(opened.problem.code)) return opened
  const products = await openOrEmpty(documents, 'products')
  const instruments = await openOrEmpty(documents, 'instruments')
  const mine = opened.ok ? opened.value.document.site : null
  return chain(all([products, instruments]), ([p, i]) =>
    ok({
      id: file.site.id,
      name: file.site.name,
      state: mine === null ? 'new' : same(mine, file.site) ? 'same' : 'differs',
      mine: mine === null ? null : summarizeSite(mine),
      theirs: summarizeSite(file.site),
      differences: mine === null ? [] : compareSites(mine, file.site),
      products: missingFrom(p.document.products, file.products).length,
      instruments: missingFrom(i.document.instruments, file.instruments).length,
    }),
  )
}

export const importSite: Service<'site.import'> =
  (ports) =>
  async ({ text, ...how }) => {
    const decoded = decode('site', text)
    return decoded.ok ? importFile(ports, decoded.value.document, how) : decoded
  }

export type ImportChoice = Pick<Parameters<ReturnType<typeof importSite>>[0], 'choice' | 'prefer'>

/**
 * All is checked before anything is written. Then the library first: a product too many does no harm, a site without its
 * product would.
 */
export async function importFile(
  ports: Ports,
  file: SiteFile,
  how: ImportChoice,
): Promise<Outcome<Output<'site.import'>>> {
  const { documents } = ports
  const opened = await documents.open(siteName(file.site.id))
  if (!opened.ok && !MAKES_ROOM.has(opened.problem.code)) return opened
  if (opened.ok && how.choice === undefined)
    return fail({ code: 'already-there', what: opened.value.document.site.name })
  if (
    opened.ok &&
    how.choice === 'merge' &&
    how.prefer === undefined &&
    asks(opened.value.document.site, file.site)
  )
    return fail({
      code: 'bad-request',
      place: 'prefer',
      reason: 'is needed, because both sides changed the same thing',
    })
  const site = opened.ok ? resolve(ports, opened.value.document.site, file.site, how) : file.site
  const checked = check({ schema: siteSchema }, site)
  if (!checked.ok) return checked
  const library = await takeLibrary(documents, file)
  if (!library.ok) return library
  const done = ok({ id: site.id, name: site.name, ...library.value })
  if (opened.ok && site.id === file.site.id && same(site, opened.value.document.site)) return done
  if (!opened.ok || site.id !== file.site.id)
    return chain(await documents.create(siteName(site.id), siteDocument(checked.value)), () => done)
  // the version that gives way is kept among the copies
  const copied = await documents.takeBackup(siteName(site.id))
  if (!copied.ok) return copied
  return chain(
    await documents.write(siteName(site.id), siteDocument(checked.value), opened.value.revision),
    () => done,
  )
}

const asks = (mine: Site, theirs: Site): boolean => compareSites(mine, theirs).some((part) => part.asks)

function resolve({ ids }: Ports, mine: Site, theirs: Site, { choice, prefer }: ImportChoice): Site {
  switch (choice) {
    case 'take-theirs':
      return theirs
    case 'keep-both':
      return { ...theirs, id: ids.next(), name: `${theirs.name.slice(0, 190)} (copy)` }
    case 'merge':
      return mergeSites(mine, theirs, prefer === undefined ? byContent : prefer === 'mine' ? first : second)
    default:
      return mine
  }
}
