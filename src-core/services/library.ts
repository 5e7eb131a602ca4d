import type { Output } from '../contract/contract'
import type { DocumentStore, LibraryDocument } from '../contract/ports'
import { apply } from '../documents/changes'
import { check, decode } from '../documents/decode'
import { DEFAULT_SETTINGS } from '../documents/default-settings'
import { encode } from '../documents/encode'
import { FORMATS, type Documents, type Format } from '../documents/formats'
import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { Service } from './service'

/** The library documents as they are before anybody wrote one. */
export const EMPTY_LIBRARY: { readonly [K in LibraryDocument]: Documents[K] } = {
  products: { format: 'dosewright-products', version: 1, products: [] },
  instruments: { format: 'dosewright-instruments', version: 1, instruments: [] },
  settings: { format: 'dosewright-settings', version: 1, settings: DEFAULT_SETTINGS },
}

export interface OpenLibrary<K extends LibraryDocument> {
  readonly document: Documents[K]
  readonly revision: number
  readonly exists: boolean
}

type WholeLibrary = Output<'library.open'>

/** A library document, or the empty one at revision 0 while there is none. */
export async function openOrEmpty<K extends LibraryDocument>(
  documents: DocumentStore,
  kind: K,
): Promise<Outcome<OpenLibrary<K>>> {
  const opened = await documents.open({ kind })
  if (opened.ok) return ok({ document: opened.value.document, revision: opened.value.revision, exists: true })
  if (opened.problem.code === 'not-found')
    return ok({ document: EMPTY_LIBRARY[kind] as Documents[K], revision: 0, exists: false })
  return opened
}

/** Writes a library document on the revision it was read at, making it when there was none. */
export async function writeLibrary<K extends LibraryDocument>(
  documents: DocumentStore,
  kind: K,
  document: Documents[K],
  opened: { readonly revision: number; readonly exists: boolean },
): Promise<Outcome<number>> {
  const name: { readonly kind: K } = { kind }
  const written = opened.exists
    ? await documents.write(name, document, opened.revision)
    : await documents.create(name, document)
  return chain(written, ({ revision }) => ok(revision))
}

/** The whole library, each part with the revision it was read at. */
export async function openWhole(documents: DocumentStore): Promise<Outcome<WholeLibrary>> {
  const products = await openOrEmpty(documents, 'products')
  const instruments = await openOrEmpty(documents, 'instruments')
  const settings = await openOrEmpty(documents, 'settings')
  return chain(all([products, instruments, settings]), ([p, i, s]) =>
    ok({
      products: p.document.products,
      instruments: i.document.instruments,
      settings: s.document.settings,
      revisions: { products: p.revision, instruments: i.revision, settings: s.revision },
    }),
  )
}

export const openLibrary: Service<'library.open'> =
  ({ documents }) =>
  () =>
    openWhole(documents)

/** Changes are made on the list of products, the list of instruments, or the settings, not on the file around them. */
export const editLibrary: Service<'library.edit'> =
  ({ documents, clock }) =>
  async ({ document: kind, base, changes }) => {
    const opened = await openOrEmpty(documents, kind)
    if (!opened.ok) return opened
    if (opened.value.revision !== base) return fail({ code: 'document-changed-elsewhere', document: kind })
    const before = opened.value.document as unknown as Readonly<Record<string, unknown>>
    const applied = apply(before[kind], changes)
    if (applied === null)
      return fail({ code: 'bad-request', place: 'changes', reason: `do not fit the ${kind}` })
    const format: Format<Documents[LibraryDocument]> = FORMATS[kind]
    const checked = check(format, { ...before, [kind]: applied.document })
    if (!checked.ok) return checked
    return chain(await writeLibrary(documents, kind, checked.value, opened.value), (revision) =>
      ok({ revision, savedAt: clock.now() }),
    )
  }

export const exportSettings: Service<'settings.export'> =
  ({ documents }) =>
  async () =>
    chain(await openOrEmpty(documents, 'settings'), ({ document }) =>
      ok({ text: encode('settings', document) }),
    )

export const readSettings =
  (): ReturnType<Service<'settings.read'>> =>
  async ({ text }) =>
    chain(decode('settings', text), ({ document }) => ok({ settings: document.settings }))

export const recoverLibrary: Service<'library.recover'> =
  ({ documents }) =>
  async ({ document: kind }) => {
    const recovered = await documents.recover({ kind })
    if (recovered.ok) return ok({ revision: recovered.value.revision })
    if (recovered.problem.code !== 'not-found') return recovered
    return chain(await documents.create({ kind }, EMPTY_LIBRARY[kind]), ({ revision }) => ok({ revision }))
  }
