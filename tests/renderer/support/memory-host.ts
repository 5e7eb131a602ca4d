import type { Call, Method } from '#core/contract/contract'
import { apply, type Change } from '#core/documents/changes'
import { DEFAULT_SETTINGS } from '#core/documents/default-settings'
import { fail, ok, type Outcome } from '#core/outcome'
import type { Site } from '#core/records/index'

interface Held {
  document: unknown
  revision: number
}

/**
 * A host in memory, for tests of the window: it keeps documents, counts revisions and refuses stale edits as the real
 * one does, and can be told to be away, to refuse, or to be slow.
 */
export class MemoryHost {
  readonly documents = new Map<string, Held>()
  readonly calls: { method: Method; input: unknown }[] = []
  away = false
  refusal: string | null = null
  delay: number | null = null

  constructor(sites: readonly Site[] = []) {
    for (const site of sites) this.documents.set(`site:${site.id}`, { document: site, revision: 0 })
    this.documents.set('products', { document: [], revision: 0 })
    this.documents.set('instruments', { document: [], revision: 0 })
    this.documents.set('settings', { document: DEFAULT_SETTINGS, revision: 0 })
  }

  /** Changes a document as another window would. */
  editElsewhere(name: string, change: (document: never) => unknown): void {
    const held = this.held(name)
    held.document = change(held.document as never)
    held.revision += 1
  }

  held(name: string): Held {
    const held = this.documents.get(name)
    if (held === undefined) throw new Error(`no document ${name}`)
    return held
  }

  edits(): number {
    return this.calls.filter(({ method }) => method === 'site.edit' || method === 'library.edit').length
  }

  readonly call: Call = (async (method: Method, input: unknown) => {
    this.calls.push({ method, input: structuredClone(input) })
    if (this.delay !== null) await new Promise((done) => setTimeout(done, this.delay ?? 0))
    return this.away ? fail({ code: 'host-gone' }) : this.answer(method, input as Record<string, unknown>)
  }) as Call

  private answer(method: Method, input: Record<string, unknown>): Outcome<unknown> {
    switch (method) {
      case 'host.describe':
        return ok({ kind: 'local-window', version: '0.0.0', savesPdf: false, dataFolder: '/nowhere' })
      case 'library.open': {
        const [products, instruments, settings] = ['products', 'instruments', 'settings'].map((name) =>
          this.held(name),
        )
        return ok({
          products: products?.document,
          instruments: instruments?.document,
          settings: settings?.document,
          revisions: {
            products: products?.revision,
            instruments: instruments?.revision,
            settings: settings?.revision,
          },
        })
      }
      case 'site.open': {
        const held = this.documents.get(`site:${String(input['id'])}`)
        return held === undefined
          ? fail({ code: 'not-found', what: String(input['id']) })
          : ok({ site: structuredClone(held.document), revision: held.revision })
      }
      case 'site.edit':
        return this.edit(`site:${String(input['id'])}`, input)
      case 'library.edit':
        return this.edit(String(input['document']), input)
      default:
        return fail({ code: 'unavailable', what: method })
    }
  }

  private edit(name: string, input: Record<string, unknown>): Outcome<unknown> {
    if (this.refusal !== null) return fail({ code: 'not-saved', reason: this.refusal })
    const held = this.held(name)
    if (input['base'] !== held.revision) return fail({ code: 'document-changed-elsewhere', document: name })
    const changed = apply(held.document, structuredClone(input['changes']) as readonly Change[])
    if (changed === null) return fail({ code: 'bad-request', place: 'changes', reason: 'does not fit' })
    held.document = changed.document
    held.revision += 1
    return ok({ revision: held.revision, savedAt: '2026-11-02T14:05:00.000Z' })
  }
}

/** A tab's storage, without a browser. */
export class MemoryStorage implements Storage {
  readonly #items = new Map<string, string>()
  get length(): number {
    return this.#items.size
  }
  clear(): void {
    this.#items.clear()
  }
  getItem(key: string): string | null {
    return this.#items.get(key) ?? null
  }
  key(index: number): string | null {
    return [...this.#items.keys()][index] ?? null
  }
  removeItem(key: string): void {
    this.#items.delete(key)
  }
  setItem(key: string, value: string): void {
    this.#items.set(key, value)
  }
}
