import type { DocumentFor, DocumentName, DocumentStore, Encoded, Stored } from '#core/contract/ports'
import { same } from '#core/documents/same'
import { fail, ok, type Outcome } from '#core/outcome'
import { Backups } from './backups'
import { CODECS, underOwnId, type Codec, type Codecs } from './codec'
import { DocumentFile, placeOf, type Place } from './document-file'
import { lastGoodOf, readCopy } from './last-good'
import { listSites, NO_NOTES, siteKeys, type SiteNotes } from './list-sites'
import { notSaved } from './not-saved'
import { readRemoved, RemovedSites } from './removed'

export interface StoreOptions {
  readonly root: string
  readonly now: () => string
  /** asked before every write; a problem refuses it */
  readonly mayWrite: () => Outcome<void>
  readonly codecs?: Codecs
  /** what is noted of the site files, so that a list of them need not read each; without it each is read */
  readonly notes?: SiteNotes
}

interface Open<N extends DocumentName> {
  readonly file: DocumentFile<DocumentFor<N>>
  readonly codec: Codec<DocumentFor<N>>
  readonly backups: Backups
  /** null: not read yet, let go, or nothing readable there */
  stored: Stored<DocumentFor<N>> | null
  /** of what was let go; the file must not have changed since */
  revision: number | null
}

/** Sites kept in memory; of others only their revision is known, and their file is read again when asked for. */
export const SITES_KEPT = 12

/** The documents of one data folder. All work on a document is done in one go, so two calls cannot get into each other. */
export class FileStore implements DocumentStore {
  readonly #options: StoreOptions
  readonly #codecs: Codecs
  readonly #removed: RemovedSites
  readonly #open = new Map<string, Open<DocumentName>>()
  /** sites in memory, the one asked for longest ago first */
  readonly #kept = new Set<Open<DocumentName>>()
  // no two runs of the program give the same number to two different versions of a document
  #lastRevision = Date.now()

  constructor(options: StoreOptions) {
    this.#options = options
    this.#codecs = options.codecs ?? CODECS
    this.#removed = new RemovedSites(options.root)
  }

  open = async <N extends DocumentName>(name: N): Promise<Outcome<Stored<DocumentFor<N>>>> => this.#load(name)

  create = async <N extends DocumentName>(
    name: N,
    document: DocumentFor<N>,
  ): Promise<Outcome<Stored<DocumentFor<N>>>> => {
    const room = this.#room(name, null)
    return room.ok ? this.#write(name, document) : room
  }

  write = async <N extends DocumentName>(
    name: N,
    document: DocumentFor<N>,
    base: number,
  ): Promise<Outcome<Stored<DocumentFor<N>>>> => {
    const room = this.#room(name, base)
    return room.ok ? this.#write(name, document) : room
  }

  put = async (name: DocumentName, { bytes }: Encoded, base: number | null): Promise<Outcome<number>> => {
    const room = this.#room(name, base)
    if (!room.ok) return room
    const entry = this.#entry(name)
    const written = this.#written(entry, name, (file) =>
      file.writeBytes(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength)),
    )
    if (!written.ok) return written
    // read from its file when it is asked for
    this.#lastRevision += 1
    entry.stored = null
    entry.revision = this.#lastRevision
    return ok(entry.revision)
  }

  listSites: DocumentStore['listSites'] = async () => {
    try {
      const noted = (await this.#options.notes?.()) ?? NO_NOTES
      return ok(
        listSites(siteKeys(this.#options.root), noted, (id) => {
          const name = { kind: 'site', id } as const
          const { file, backups, codec } = this.#entry(name)
          return {
            found: this.#load(name),
            path: file.path,
            lastGood: () => lastGoodOf(file, backups, codec),
          }
        }),
      )
    } catch (error) {
      return notSaved(error)
    }
  }

  listRemoved: DocumentStore['listRemoved'] = async () =>
    ok(
      this.#removed.list().flatMap(({ key, path, removedAt }) => {
        const found = readRemoved(path, this.#codecs.site)
        return found?.ok === true ? [{ id: key, name: found.value.site.name, removedAt }] : []
      }),
    )

  openRemoved: DocumentStore['openRemoved'] = async (id) => {
    const key = id.toLowerCase()
    const path = this.#removed.newest(key)
    const found = path === null ? null : readRemoved(path, underOwnId(this.#codecs.site, key))
    return found ?? fail({ code: 'not-found', what: 'the removed site' })
  }

  remove: DocumentStore['remove'] = async (name) => {
    const { file } = this.#entry(name)
    const found = this.#load(name)
    if (!found.ok && found.problem.code !== 'document-damaged') return found
    return this.#changing(name, () => {
      const { key } = placeOf(this.#options.root, name)
      const path = file.left()
      if (path !== null) this.#removed.put(path, key, this.#options.now())
      file.forget()
      return ok(undefined)
    })
  }

  restore = async <N extends DocumentName>(name: N): Promise<Outcome<Stored<DocumentFor<N>>>> => {
    const { file } = this.#entry(name)
    const found = this.#load(name)
    if (found.ok) return fail({ code: 'already-there', what: labelOf(name, found.value.document) })
    const { key } = placeOf(this.#options.root, name)
    return this.#changing(name, () =>
      this.#removed.take(key, file.path)
        ? this.#load(name)
        : fail({ code: 'not-found', what: 'the removed site' }),
    )
  }

  recover = async <N extends DocumentName>(name: N): Promise<Outcome<Stored<DocumentFor<N>>>> => {
    const found = this.#load(name)
    if (found.ok) return fail({ code: 'already-there', what: labelOf(name, found.value.document) })
    if (found.problem.code === 'document-newer') return found
    const { file, backups, codec } = this.#entry(name)
    const lastGood = lastGoodOf(file, backups, codec)
    if (lastGood === null) return fail({ code: 'not-found', what: 'the last good version' })
    return this.#write(name, lastGood.document)
  }

  listBackups: DocumentStore['listBackups'] = async (name) => ok(this.#entry(name).backups.list())

  readBackup = async <N extends DocumentName>(name: N, copy: string): Promise<Outcome<DocumentFor<N>>> => {
    const { backups, codec } = this.#entry(name)
    return readCopy(backups, copy, codec) ?? fail({ code: 'not-found', what: 'the copy' })
  }

  takeBackup: DocumentStore['takeBackup'] = async (name) =>
    this.#changing(
      name,
      () => {
        this.#entry(name).backups.take(this.#options.now())
        return ok(undefined)
      },
      false,
    )

  /** Before the data folder is given back: last good versions that are only a second name yet get files of their own. */
  close(): void {
    for (const { file } of this.#open.values()) file.settle()
  }

  #entry<N extends DocumentName>(name: N): Open<N> {
    const place = placeOf(this.#options.root, name)
    const label = labelIn(place)
    const known = this.#open.get(label)
    if (known !== undefined) return known as unknown as Open<N>
    const codec = (name.kind === 'site'
      ? underOwnId(this.#codecs.site, place.key)
      : this.#codecs[name.kind]) as unknown as Codec<DocumentFor<N>>
    const file = new DocumentFile(place, codec, this.#options.now)
    const fresh: Open<N> = {
      file,
      codec,
      backups: new Backups(this.#options.root, place.key, file.path),
      stored: null,
      revision: null,
    }
    this.#open.set(label, fresh as unknown as Open<DocumentName>)
    return fresh
  }

  #load<N extends DocumentName>(name: N): Outcome<Stored<DocumentFor<N>>> {
    const entry = this.#entry(name)
    if (entry.stored !== null) {
      if (name.kind === 'site') this.#letGoOfOthers(entry)
      return ok(entry.stored)
    }
    const known = entry.file.replacedByOthers() ? null : entry.revision
    const read = entry.file.read()
    if (!read.ok) {
      // ids that were only asked for are not remembered
      if (read.problem.code === 'not-found') this.#open.delete(labelIn(placeOf(this.#options.root, name)))
      return read
    }
    return this.#remember(entry, read.value, known)
  }

  /** Whether there is room for a document that comes anew (`base` null), or in place of that revision. */
  #room(name: DocumentName, base: number | null): Outcome<void> {
    const found = this.#load(name)
    if (base === null) {
      if (found.ok) return fail({ code: 'already-there', what: labelOf(name, found.value.document) })
      const { code } = found.problem
      return code === 'not-found' || code === 'document-damaged' ? ok(undefined) : found
    }
    if (!found.ok) return found
    return found.value.revision === base
      ? ok(undefined)
      : fail({ code: 'document-changed-elsewhere', document: labelOf(name, found.value.document) })
  }

  #write<N extends DocumentName>(name: N, document: DocumentFor<N>): Outcome<Stored<DocumentFor<N>>> {
    const entry = this.#entry(name)
    const written = this.#written(entry, name, (file) => file.write(document))
    return written.ok ? this.#remember(entry, document) : written
  }

  #written<N extends DocumentName>(
    entry: Open<N>,
    name: N,
    write: (file: Open<N>['file']) => Outcome<void>,
  ): Outcome<void> {
    const allowed = this.#options.mayWrite()
    if (!allowed.ok) return allowed
    const otherHand = this.#otherHand(entry, name)
    if (otherHand !== null) return otherHand
    try {
      entry.backups.daily(this.#options.now())
    } catch {
      // a copy that cannot be made must not stand in the way of saving; a full disk shows below
    }
    return write(entry.file)
  }

  /** Another hand was at the file: a whole document wins over our memory, a damaged one is set aside by reading it. */
  #otherHand<N extends DocumentName>(entry: Open<N>, name: N): Outcome<never> | null {
    const ours = entry.stored
    if (ours === null || !entry.file.replacedByOthers()) return null
    const read = entry.file.read()
    if (!read.ok)
      return read.problem.code === 'document-damaged' || read.problem.code === 'not-found' ? null : read
    if (same(read.value, ours.document)) return null
    this.#remember(entry, read.value)
    return fail({ code: 'document-changed-elsewhere', document: labelOf(name, read.value) })
  }

  /** Moves of files, after which what is in memory counts no more. */
  #changing<R>(name: DocumentName, work: () => Outcome<R>, forgets = true): Outcome<R> {
    const allowed = this.#options.mayWrite()
    if (!allowed.ok) return allowed
    if (forgets) {
      const entry = this.#entry(name)
      entry.stored = null
      entry.revision = null
    }
    try {
      return work()
    } catch (error) {
      return notSaved(error)
    }
  }

  #remember<N extends DocumentName>(
    entry: Open<N>,
    document: DocumentFor<N>,
    known: number | null = null,
  ): Outcome<Stored<DocumentFor<N>>> {
    if (known === null) this.#lastRevision += 1
    const revision = known ?? this.#lastRevision
    entry.stored = { document, revision }
    entry.revision = revision
    if ('site' in document) this.#letGoOfOthers(entry)
    return ok(entry.stored)
  }

  /** Keeps the sites asked for last; this one is the newest of them. */
  #letGoOfOthers<N extends DocumentName>(entry: Open<N>): void {
    const newest = entry as unknown as Open<DocumentName>
    this.#kept.delete(newest)
    this.#kept.add(newest)
    for (const oldest of this.#kept) {
      if (this.#kept.size <= SITES_KEPT) break
      oldest.stored = null
      oldest.file.rest()
      this.#kept.delete(oldest)
    }
  }
}

const labelIn = ({ folder, key }: Place): string => `${folder}/${key}`

const labelOf = (name: DocumentName, document: unknown): string =>
  name.kind === 'site' ? (document as { readonly site: { readonly name: string } }).site.name : name.kind
