import type { Call, HostDescription } from '#core/contract/contract'
import { ok, type Outcome } from '#core/outcome'
import type { Id, Instrument, Product, Settings, Site } from '#core/records/index'
import { Clock } from './clock.svelte'
import { History } from './history.svelte'
import { SavedDocument, type Pipe } from './saved-document.svelte'
import { unsentIn, type UnsentStore } from './unsent'

export interface LibraryContents {
  readonly products: readonly Product[]
  readonly instruments: readonly Instrument[]
  readonly settings: Settings
}
export type LibraryName = keyof LibraryContents
export type LibraryContent<N extends LibraryName> = LibraryContents[N]
export type LibraryDocuments = { readonly [N in LibraryName]: SavedDocument<LibraryContents[N]> }

/** Answers that mean: nobody there who knows this window. */
const GONE: ReadonlySet<string> = new Set(['host-gone', 'no-session'])

/** Everything one window holds: the way to the host, the documents opened in this run, and the history of edits. */
export class Workspace {
  readonly history = new History()
  readonly clock = new Clock()
  /** the host did not answer the last call */
  hostGone = $state(false)
  #sites: ReadonlyMap<Id, SavedDocument<Site>> = $state.raw(new Map())
  readonly #opening = new Map<Id, Promise<Outcome<SavedDocument<Site>>>>()

  private constructor(
    readonly call: Call,
    readonly host: HostDescription,
    readonly library: LibraryDocuments,
    private readonly unsent: UnsentStore,
  ) {}

  static async open(bare: Call, storage: Storage): Promise<Outcome<Workspace>> {
    const watch: { workspace: Workspace | null } = { workspace: null }
    const call: Call = async (method, input) => {
      const reply = await bare(method, input)
      if (watch.workspace !== null) watch.workspace.hostGone = !reply.ok && GONE.has(reply.problem.code)
      return reply
    }
    const host = await call('host.describe', {})
    if (!host.ok) return host
    const library = await call('library.open', {})
    if (!library.ok) return library
    const unsent = unsentIn(storage)
    const { products, instruments, settings, revisions } = library.value
    const documents: LibraryDocuments = {
      products: new SavedDocument(
        'products',
        { document: products, revision: revisions.products },
        libraryPipe(call, 'products'),
        unsent,
      ),
      instruments: new SavedDocument(
        'instruments',
        { document: instruments, revision: revisions.instruments },
        libraryPipe(call, 'instruments'),
        unsent,
      ),
      settings: new SavedDocument(
        'settings',
        { document: settings, revision: revisions.settings },
        libraryPipe(call, 'settings'),
        unsent,
      ),
    }
    const workspace = new Workspace(call, host.value, documents, unsent)
    for (const document of workspace.documents)
      document.onReplaced = () => workspace.history.forget(document.name)
    watch.workspace = workspace
    workspace.#resume()
    return ok(workspace)
  }

  libraryDocument<N extends LibraryName>(name: N): SavedDocument<LibraryContents[N]> {
    return this.library[name]
  }

  get documents(): readonly SavedDocument<unknown>[] {
    const { products, instruments, settings } = this.library
    return [products, instruments, settings, ...this.#sites.values()] as readonly SavedDocument<unknown>[]
  }

  /** The document of a site: the one already open, brought up to date, or a fresh one. */
  async openSite(id: Id): Promise<Outcome<SavedDocument<Site>>> {
    const open = this.#sites.get(id)
    if (open !== undefined) {
      await open.refresh()
      return ok(open)
    }
    // one document for all who ask at once, or each would send edits of its own
    const opening = this.#opening.get(id) ?? this.#openAnew(id).finally(() => this.#opening.delete(id))
    this.#opening.set(id, opening)
    return opening
  }

  async #openAnew(id: Id): Promise<Outcome<SavedDocument<Site>>> {
    const loaded = await this.call('site.open', { id })
    if (!loaded.ok) return loaded
    const document = new SavedDocument<Site>(
      `site:${id}`,
      { document: loaded.value.site, revision: loaded.value.revision },
      this.#sitePipe(id),
      this.unsent,
    )
    document.onReplaced = () => this.history.forget(document.name)
    this.#sites = new Map([...this.#sites, [id, document]])
    return ok(document)
  }

  /** Edits of sites that did not arrive before the page was loaded anew are sent, whatever screen is shown now. */
  #resume(): void {
    for (const name of this.unsent.names())
      if (name.startsWith('site:')) void this.openSite(name.slice('site:'.length))
  }

  /** A removed site is no longer kept open; nothing of it can be undone here. */
  closeSite(id: Id): void {
    this.history.forget(`site:${id}`)
    this.#sites = new Map([...this.#sites].filter(([open]) => open !== id))
  }

  /** Products or instruments were added by an import or by the demo. */
  async refreshLibrary(): Promise<void> {
    const { products, instruments, settings } = this.library
    await Promise.all([products.refresh(), instruments.refresh(), settings.refresh()])
  }

  async flush(): Promise<void> {
    await Promise.all(this.documents.map((document) => document.flush()))
  }

  /** Asks the host whether it is there, and sends what waits. */
  async retry(): Promise<void> {
    const answer = await this.call('host.describe', {})
    if (answer.ok) await this.flush()
  }

  /** For the moment the page goes away: edits are sent without waiting, and kept in the tab in case they do not arrive. */
  leave(): void {
    for (const document of this.documents) document.park()
    void this.flush()
  }

  #sitePipe(id: Id): Pipe<Site> {
    return {
      send: (base, changes) => this.call('site.edit', { id, base, changes }),
      load: async () => {
        const reply = await this.call('site.open', { id })
        return reply.ok ? ok({ document: reply.value.site, revision: reply.value.revision }) : reply
      },
    }
  }
}

function libraryPipe<N extends LibraryName>(call: Call, document: N): Pipe<LibraryContent<N>> {
  return {
    send: (base, changes) => call('library.edit', { document, base, changes }),
    load: async () => {
      const reply = await call('library.open', {})
      return reply.ok
        ? ok({
            document: reply.value[document] as LibraryContent<N>,
            revision: reply.value.revisions[document],
          })
        : reply
    },
  }
}
