import { randomUUID } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { HostPort } from '#core/contract/ports'
import { chain, ok, type Outcome } from '#core/outcome'
import { createServices } from '#core/services/services'
import { dispatcher, type Dispatch } from './dispatch'
import { clearLeftovers, prepareDataFolder } from './storage/data-folder'
import { takeDataLock, type DataLock } from './storage/data-lock'
import { ReaderOnThread, readerHere, type Reader } from './reading/thread'
import { FileStore } from './storage/document-store'
import { notSaved } from './storage/not-saved'
import { sharedFolder } from './storage/shared-folder'
import type { NotedSite } from './summary/desk'
import { Region, type Desk } from './summary/region'
import { deskOnThread } from './summary/thread'
import type { SiteNotes } from './storage/list-sites'

export interface ProgramOptions {
  readonly dataFolder: string
  /** where the files that ship with the program lie */
  readonly assets: string
  readonly host: HostPort
  readonly log: (line: string) => void
  readonly shared?: { readonly folder: string | null; readonly ask: (() => Promise<string | null>) | null }
  readonly now?: () => string
  /** the built file of the thread that keeps notes of all sites; without it they are kept in this one */
  readonly summaryFile?: string
  /** the built file of the thread that reads large files; without it they are read in this one */
  readonly readingFile?: string
  readonly version?: string
}

export interface Program {
  readonly dispatch: Dispatch
  /** the body of a call that came as bytes */
  readonly parse: Reader['parse']
  /** gives the data folder back; writes are done by then, because each is finished before it is acknowledged */
  readonly close: () => void
}

/** The program without a window: takes the data folder and puts storage, services and dispatch together. */
export function compose(options: ProgramOptions): Outcome<Program> {
  const now = options.now ?? (() => new Date().toISOString())
  try {
    prepareDataFolder(options.dataFolder)
  } catch (error) {
    return notSaved(error)
  }
  return chain(takeDataLock(options.dataFolder, now), (lock) => {
    clearLeftovers(options.dataFolder)
    const keeper = new LockKeeper(options.dataFolder, now, lock)
    const { folder, ask } = options.shared ?? { folder: null, ask: null }
    const desk = deskOf(options, now)
    const reading =
      options.readingFile === undefined
        ? readerHere()
        : new ReaderOnThread(options.dataFolder, options.readingFile)
    const documents = new FileStore({
      root: options.dataFolder,
      now,
      mayWrite: () => keeper.mayWrite(),
      notes: notesOf(desk),
    })
    const services = createServices({
      clock: { now },
      ids: { next: randomUUID },
      documents,
      reading,
      portfolio: desk,
      shared: sharedFolder({ root: options.dataFolder, folder, ask }),
      host: options.host,
      demos: async () => demoTexts(join(options.assets, 'demo')),
    })
    const close = (): void => {
      documents.close()
      desk.close()
      reading.close()
      keeper.release()
    }
    return ok({ dispatch: dispatcher(services, options.log), parse: reading.parse, close })
  })
}

function deskOf({ dataFolder: root, summaryFile, version = '' }: ProgramOptions, now: () => string): Desk {
  return summaryFile === undefined
    ? new Region({ root, program: version, now })
    : deskOnThread({ root }, summaryFile, version)
}

const notesOf =
  (desk: Desk): SiteNotes =>
  async () => {
    const { sites, waiting } = await desk.list()
    return {
      sites: new Map(JSON.parse(sites) as readonly (readonly [string, NotedSite])[]),
      waiting: new Set(waiting),
    }
  }

/** A lock file somebody deleted is taken again; a folder another program took is left to it. */
class LockKeeper {
  #lock: DataLock
  #released = false

  constructor(
    readonly root: string,
    readonly now: () => string,
    lock: DataLock,
  ) {
    this.#lock = lock
  }

  mayWrite(): Outcome<void> {
    if (this.#released) return { ok: false, problem: { code: 'host-gone' } }
    if (this.#lock.isOurs()) return ok(undefined)
    return chain(takeDataLock(this.root, this.now), (lock) => {
      this.#lock.release()
      this.#lock = lock
      return ok(undefined)
    })
  }

  release(): void {
    this.#released = true
    this.#lock.release()
  }
}

const demoTexts = (folder: string): readonly string[] =>
  readdirSync(folder)
    .filter((file) => file.endsWith('.json'))
    .toSorted()
    .map((file) => readFileSync(join(folder, file), 'utf8'))
