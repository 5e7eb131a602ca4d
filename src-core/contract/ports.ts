import type { Documents } from '../documents/formats'
import type { SiteFacts } from '../documents/site-facts'
import type { Outcome } from '../outcome'
import type { SiteFile } from '../documents/site-schema'
import type { Id, Instant, Instrument, Product, Site } from '../records'
import type { SiteOutlook } from '../worksheet/site-outlook'
import type { Library } from '../worksheet/site-row'
import type { HostDescription, Input, Output, SiteComparison } from './contract'

/** What the services need from the world. Each host, and each test, brings its own. */
export interface Ports {
  readonly clock: { readonly now: () => Instant }
  readonly ids: { readonly next: () => Id }
  readonly documents: DocumentStore
  readonly host: HostPort
  readonly shared: SharedFolder
  readonly reading: Reading
  readonly portfolio: Portfolio
  /** the texts of the demo site files that ship with the program */
  readonly demos: () => Promise<readonly string[]>
}

export interface HostPort {
  readonly describe: () => HostDescription
  /** `null`: this host cannot, the page's own print command does it */
  readonly savePdf: ((title: string, sheet: 'A4' | 'Letter') => Promise<Outcome<{ saved: boolean }>>) | null
}

export type LibraryDocument = 'products' | 'instruments' | 'settings'
export type DocumentName = { readonly kind: 'site'; readonly id: Id } | { readonly kind: LibraryDocument }
export type DocumentFor<N extends DocumentName> = Documents[N['kind']]

/** A decoded document and a number that grows with every write of it while this program runs. */
export interface Stored<T> {
  readonly document: T
  readonly revision: number
}

/** A site document as it was found, readable or not. */
export type ListedSite =
  | ({ readonly state: 'good'; readonly changedAt: Instant | null } & SiteFacts)
  /** there is a file that nobody has looked into yet */
  | { readonly state: 'waiting'; readonly id: string }
  | {
      readonly state: 'damaged'
      readonly id: string
      readonly name: string | null
      readonly setAside: string | null
      readonly lastGoodAt: Instant | null
    }
  | { readonly state: 'newer'; readonly id: string; readonly version: number }

export interface Backup {
  readonly copy: string
  readonly takenAt: Instant
  readonly kilobytes: number
}

/**
 * Whole documents by name. A write is acknowledged only after it is on disk; an unreadable document is set aside,
 * never overwritten. `document` is the decoded file (`SiteFile`, `ProductsFile`, ...).
 */
export interface DocumentStore {
  readonly listSites: () => Promise<Outcome<readonly ListedSite[]>>
  readonly listRemoved: () => Promise<
    Outcome<readonly { readonly id: Id; readonly name: string; readonly removedAt: Instant }[]>
  >
  /** The version of a removed site that `restore` would bring back, left where it is. */
  readonly openRemoved: (id: Id) => Promise<Outcome<SiteFile>>
  readonly open: <N extends DocumentName>(name: N) => Promise<Outcome<Stored<DocumentFor<N>>>>
  readonly create: <N extends DocumentName>(
    name: N,
    document: DocumentFor<N>,
  ) => Promise<Outcome<Stored<DocumentFor<N>>>>
  /** Refused with `document-changed-elsewhere` when `base` is not the revision in force. */
  readonly write: <N extends DocumentName>(
    name: N,
    document: DocumentFor<N>,
    base: number,
  ) => Promise<Outcome<Stored<DocumentFor<N>>>>
  /** The same as `create` (`base` null) or `write`, for a document that was checked and encoded elsewhere. */
  readonly put: (name: DocumentName, encoded: Encoded, base: number | null) => Promise<Outcome<number>>
  readonly remove: (name: DocumentName) => Promise<Outcome<void>>
  readonly restore: <N extends DocumentName>(name: N) => Promise<Outcome<Stored<DocumentFor<N>>>>
  /** Puts the last good version back. */
  readonly recover: <N extends DocumentName>(name: N) => Promise<Outcome<Stored<DocumentFor<N>>>>
  readonly listBackups: (name: DocumentName) => Promise<Outcome<readonly Backup[]>>
  readonly readBackup: <N extends DocumentName>(name: N, copy: string) => Promise<Outcome<DocumentFor<N>>>
  /** Copies the document in force under today's instant, whatever copies there are already. */
  readonly takeBackup: (name: DocumentName) => Promise<Outcome<void>>
}

/** The bytes of a document's file. */
export interface Encoded {
  readonly bytes: Uint8Array
}

/** Reads site files that come from elsewhere; a host may do it away from the thread that answers. */
export interface Reading {
  readonly read: (text: string) => Promise<Outcome<Arrived>>
  /** What is being read is given up: its callers are told `stopped`. */
  readonly stop: () => Promise<void>
}

/** A site file that holds, on its way in. `mine`: the site here of the same id; null while there is none. */
export interface Arrived {
  readonly id: Id
  readonly name: string
  readonly products: readonly Product[]
  readonly instruments: readonly Instrument[]
  readonly compare: (mine: Site | null) => Promise<Outcome<Weighed>>
  readonly settle: (mine: Site | null, how: Settling) => Promise<Outcome<Settled>>
  /** lets go of it */
  readonly done: () => void
}

export type Weighed = Pick<SiteComparison, 'state' | 'mine' | 'theirs' | 'differences'>

export interface Settling extends Pick<Input<'site.import'>, 'choice' | 'prefer'> {
  /** for a copy beside the site that is here */
  readonly freshId: Id
}

/** What a file comes to. `unchanged`: it is here like that already. */
export interface Settled {
  readonly id: Id
  readonly name: string
  readonly unchanged: boolean
  readonly document: SiteFile | Encoded
}

type PortfolioMethod = 'view' | 'rows' | 'sums' | 'orders' | 'table'

/** The rows of all sites, kept from run to run and worked out anew where a site, the library or the day has changed. */
export type Portfolio = {
  readonly [M in PortfolioMethod]: (ask: Input<`portfolio.${M}`>) => Promise<Output<`portfolio.${M}`>>
} & {
  /** what sites look like, worked out where that is not noted; one that cannot be read is left out */
  readonly outlooks: (
    ids: readonly Id[],
    library: Library,
  ) => Promise<readonly { readonly id: Id; readonly outlook: SiteOutlook }[]>
  /** begins a round when a library is given */
  readonly progress: (library: Library | null) => Promise<Output<'portfolio.progress'>>
  readonly stop: () => Promise<void>
}

/** A folder that several installations see. Each writes only files of its own. */
export interface SharedFolder {
  readonly describe: () => { readonly folder: string | null; readonly canChoose: boolean }
  readonly choose: () => Promise<Outcome<string | null>>
  /** the site files in the folder that this installation did not put there as they are now */
  readonly list: () => Promise<Outcome<readonly SharedFile[]>>
  readonly read: (file: string) => Promise<Outcome<string>>
  readonly write: (siteId: Id, text: string) => Promise<Outcome<string>>
  readonly markTaken: (file: string) => Promise<void>
}

export interface SharedFile {
  readonly file: string
  readonly changedAt: Instant
  /** dealt with in this very version */
  readonly taken: boolean
}
