import type { Output } from '../contract/contract'
import type { Arrived, DocumentStore, Ports, Settled, Settling } from '../contract/ports'
import { encode } from '../documents/encode'
import type { SiteFile } from '../documents/site-schema'
import { usedLibrary } from '../documents/used-library'
import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { Site } from '../records'
import { arrivedHere } from './arrived'
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
    return opened.ok ? travelling(documents, opened.value.document.site) : opened
  }

export const exportRemovedSite: Service<'site.exportRemoved'> =
  ({ documents }) =>
  async ({ id }) => {
    const found = await documents.openRemoved(id)
    return found.ok ? travelling(documents, found.value.site) : found
  }

async function travelling(documents: DocumentStore, site: Site): Promise<Outcome<Output<'site.export'>>> {
  const products = await openOrEmpty(documents, 'products')
  const instruments = await openOrEmpty(documents, 'instruments')
  return chain(all([products, instruments]), ([p, i]) => {
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
  ({ text }) =>
    withArrived(ports, text, (arrived) => compareArrived(ports, arrived))

export const importSite: Service<'site.import'> =
  (ports) =>
  ({ text, ...how }) =>
    withArrived(ports, text, (arrived) => importArrived(ports, arrived, how))

export const stopReading: Service<'site.stopReading'> =
  ({ reading }) =>
  async () => {
    await reading.stop()
    return ok({ stopped: true })
  }

/** Reads a file, uses it, and lets go of it. */
export async function withArrived<T>(
  { reading }: Ports,
  text: string,
  use: (arrived: Arrived) => Promise<Outcome<T>>,
): Promise<Outcome<T>> {
  const read = await reading.read(text)
  if (!read.ok) return read
  try {
    return await use(read.value)
  } finally {
    read.value.done()
  }
}

/** What an import of this file would meet. */
export async function compareArrived(
  { documents }: Ports,
  arrived: Arrived,
): Promise<Outcome<Output<'site.compare'>>> {
  const opened = await documents.open(siteName(arrived.id))
  if (!opened.ok && !MAKES_ROOM.has(opened.problem.code)) return opened
  const products = await openOrEmpty(documents, 'products')
  const instruments = await openOrEmpty(documents, 'instruments')
  const library = all([products, instruments])
  if (!library.ok) return library
  const weighed = await arrived.compare(opened.ok ? opened.value.document.site : null)
  const [p, i] = library.value
  return chain(weighed, (found) =>
    ok({
      id: arrived.id,
      name: arrived.name,
      ...found,
      products: missingFrom(p.document.products, arrived.products).length,
      instruments: missingFrom(i.document.instruments, arrived.instruments).length,
    }),
  )
}

export type ImportChoice = Omit<Settling, 'freshId'>

/** A file that is read already. */
export const importFile = (
  ports: Ports,
  file: SiteFile,
  how: ImportChoice,
): Promise<Outcome<Output<'site.import'>>> => importArrived(ports, arrivedHere(file), how)

/**
 * All is checked before anything is written. Then the library first: a product too many does no harm, a site without its
 * product would.
 */
export async function importArrived(
  { documents, ids }: Pick<Ports, 'documents' | 'ids'>,
  arrived: Arrived,
  how: ImportChoice,
): Promise<Outcome<Output<'site.import'>>> {
  const opened = await documents.open(siteName(arrived.id))
  if (!opened.ok && !MAKES_ROOM.has(opened.problem.code)) return opened
  if (opened.ok && how.choice === undefined)
    return fail({ code: 'already-there', what: opened.value.document.site.name })
  const freshId = opened.ok && how.choice === 'keep-both' ? ids.next() : arrived.id
  const settled = await arrived.settle(opened.ok ? opened.value.document.site : null, { ...how, freshId })
  if (!settled.ok) return settled
  const library = await takeLibrary(documents, arrived)
  if (!library.ok) return library
  const { id, name, unchanged } = settled.value
  const done = ok({ id, name, ...library.value })
  if (unchanged) return done
  if (!opened.ok || id !== arrived.id) return chain(await keep(documents, settled.value, null), () => done)
  // the version that gives way is kept among the copies
  const copied = await documents.takeBackup(siteName(id))
  if (!copied.ok) return copied
  return chain(await keep(documents, settled.value, opened.value.revision), () => done)
}

/** `base`: the revision that gives way; null for a site that is not here. */
function keep(
  documents: DocumentStore,
  { id, document }: Settled,
  base: number | null,
): Promise<Outcome<unknown>> {
  if ('bytes' in document) return documents.put(siteName(id), document, base)
  return base === null
    ? documents.create(siteName(id), document)
    : documents.write(siteName(id), document, base)
}
