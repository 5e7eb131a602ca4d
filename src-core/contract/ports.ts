import type { Outcome } from '../outcome'
import type { Id, Instant } from '../records'
import type { SiteRow } from './contract'

/** What the services need from the world. Each host, and each test, brings its own. */
export interface Ports {
  readonly clock: { readonly now: () => Instant }
  readonly ids: { readonly next: () => Id }
  readonly documents: DocumentStore
}

export type LibraryDocument = 'products' | 'instruments' | 'settings'
export type DocumentName = { readonly kind: 'site'; readonly id: Id } | { readonly kind: LibraryDocument }

/** A decoded document and how often it was written since this program started. */
export interface Stored {
  readonly document: unknown
  readonly revision: number
}

/**
 * Whole documents by name. A write is acknowledged only after it is on disk; an unreadable document is set aside,
 * never overwritten. `document` is the decoded file (`SiteFile`, `ProductsFile`, ...).
 */
export interface DocumentStore {
  readonly listSites: () => Promise<Outcome<readonly SiteRow[]>>
  readonly open: (name: DocumentName) => Promise<Outcome<Stored>>
  readonly create: (name: DocumentName, document: unknown) => Promise<Outcome<Stored>>
  readonly write: (name: DocumentName, document: unknown, base: number) => Promise<Outcome<Stored>>
  readonly remove: (name: DocumentName) => Promise<Outcome<void>>
  readonly restore: (name: DocumentName) => Promise<Outcome<Stored>>
  readonly recover: (siteId: string) => Promise<Outcome<Stored>>
}
