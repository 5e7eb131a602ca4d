import { randomUUID } from 'node:crypto'
import { join } from 'node:path'
import { setImmediate as breathe } from 'node:timers/promises'
import type { Output } from '#core/contract/contract'
import { packRow } from '#core/documents/row-text'
import type { SiteFacts } from '#core/documents/site-facts'
import type { SiteOutlook } from '#core/worksheet/site-outlook'
import { siteNotes, type Library } from '#core/worksheet/site-row'
import { basisOf } from './basis'
import { dayIn } from './day-in'
import type { Entry } from './entry'
import { IndexFile } from './index-file'
import { readSite } from './read-site'
import { look, scan, type SeenFile } from './scan'

/** A site as the list of sites shows it, from notes. */
export type NotedSite = SiteFacts & { readonly changedAt: string }

export interface Listing {
  /** `NotedSite`s by key, as JSON: one text crosses between threads faster than thousands of objects */
  readonly sites: string
  /** keys of files not looked into yet */
  readonly waiting: readonly string[]
}

/** What is new since an answer of the same run; `begin` looks at all files and the day anew, with the library given. */
export interface NewsAsk {
  readonly begin: boolean
  readonly run: string
  readonly since: number
}

export interface News {
  /** changes when what was answered before counts no more */
  readonly run: string
  /** made by `packRow` */
  readonly rows: readonly string[]
  /** sites whose row no longer holds */
  readonly gone: readonly string[]
  readonly since: number
  /** ask again at once */
  readonly more: boolean
  readonly progress: Omit<Output<'portfolio.progress'>, 'version' | 'known'>
}

export interface DeskOptions {
  readonly root: string
  /** what worked the figures out: notes of another program are not taken over */
  readonly program: string
  readonly now: () => string
  /** ms the list of sites is held back to look into files before it says that some wait */
  readonly patience?: number
}

/** Rows in one answer, so that other questions are answered in between. */
const PAGE = 300
/** Rows kept in memory before they are put into the file together. */
const BATCH = 200
const PATIENCE_MS = 400
/** Looks at a site file that may be written just then. */
const TRIES = 3

interface Noted {
  readonly entry: Entry
  /** grows with every change of what `rows` would answer */
  readonly serial: number
}

type Round = { readonly library: Library; readonly basis: (uses: readonly string[]) => string }

/** Says what is noted of all sites, and works out what is not, between answers. */
export class SummaryDesk {
  readonly #options: DeskOptions
  readonly #file: IndexFile
  readonly #run = randomUUID()
  /** in the order of their serials */
  #noted = new Map<string, Noted>()
  #gone = new Map<string, number>()
  readonly #strange = new Map<string, boolean>()
  #fresh: Entry[] = []
  #serial = 0
  #loaded = false
  #seen = 0
  /** files to look into; with a round begun also those whose row is to be worked out */
  #queue: SeenFile[] = []
  #round: Round | null = null
  #running = false
  #closed = false

  constructor(options: DeskOptions) {
    this.#options = options
    this.#file = new IndexFile(join(options.root, 'index', 'sites.txt'), options.program)
  }

  list = async (): Promise<Listing> => {
    const files = this.#look()
    const stale = files.filter((file) => this.#noted.get(file.key)?.entry.mark !== file.mark)
    const until = performance.now() + (this.#options.patience ?? PATIENCE_MS)
    const waiting: SeenFile[] = []
    for (const file of stale) {
      if (performance.now() > until) waiting.push(file)
      else {
        this.#read(file)
        await breathe()
      }
    }
    this.#save()
    this.#enqueue(waiting)
    const sites: (readonly [string, NotedSite])[] = []
    const unread: string[] = []
    for (const { key, mark } of files) {
      const entry = this.#noted.get(key)?.entry
      if (entry?.mark === mark) sites.push([key, { ...entry.facts, changedAt: entry.changedAt }])
      else if (!this.#strange.has(key)) unread.push(key)
    }
    return { sites: JSON.stringify(sites), waiting: unread }
  }

  rows = async ({ begin, run, since }: NewsAsk, library: Library | null): Promise<News> => {
    if (begin && library !== null) this.#begin(library)
    const after = run === this.#run ? since : 0
    const changed: Noted[] = []
    let more = false
    for (const noted of this.#noted.values()) {
      if (noted.serial <= after) continue
      if (changed.length === PAGE) more = true
      if (more) break
      changed.push(noted)
    }
    const last = more ? (changed.at(-1)?.serial ?? after) : this.#serial
    const left = [...this.#gone].filter(([, serial]) => serial > after && serial <= last)
    return {
      run: this.#run,
      rows: changed.flatMap(({ entry }) => entry.row?.text ?? []),
      gone: [
        ...changed.filter(({ entry }) => entry.row === null).map(({ entry }) => entry.facts.id),
        ...left.map(([id]) => id),
      ],
      since: last,
      more,
      progress: {
        sites: this.#seen,
        left: this.#queue.length,
        running: this.#running && this.#round !== null,
        unread: this.#strange.size,
        unreadSites: [...this.#strange].slice(0, 10).map(([id, newer]) => ({ id, newer })),
      },
    }
  }

  /** What the sites named look like, worked out now where that is not noted; one that cannot be read is left out. */
  outlooks = async (
    ids: readonly string[],
    library: Library,
  ): Promise<readonly { readonly id: string; readonly outlook: SiteOutlook }[]> => {
    this.#load()
    const round = { library, basis: basisOf(library) }
    const found: { readonly id: string; readonly outlook: SiteOutlook }[] = []
    for (const id of ids) {
      const outlook = await this.#outlook(id.toLowerCase(), round)
      if (outlook !== null) found.push({ id, outlook })
    }
    this.#save()
    return found
  }

  stop = async (): Promise<void> => {
    this.#queue = []
    this.#round = null
  }

  close = (): void => {
    this.#closed = true
    this.#queue = []
  }

  #load(): void {
    if (this.#loaded) return
    for (const entry of this.#file.read()) this.#note(entry)
    this.#loaded = true
  }

  /** What holds for another day than today is good enough: an outlook says what is due by its day. */
  async #outlook(key: string, round: Round): Promise<SiteOutlook | null> {
    for (let left = TRIES; left > 0; left -= 1) {
      const file = look(join(this.#options.root, 'sites'), key)
      if (file === null) return null
      const entry = this.#noted.get(key)?.entry
      if (entry?.mark === file.mark && entry.row?.basis === round.basis(entry.uses)) return entry.row.outlook
      await breathe()
      this.#read(file, round)
    }
    return null
  }

  /** The files as they are now; notes of files that have gone go with them. */
  #look(): readonly SeenFile[] {
    this.#load()
    const files = scan(this.#options.root)
    const keys = new Set(files.map((file) => file.key))
    for (const [key, { entry }] of this.#noted)
      if (!keys.has(key)) {
        this.#noted.delete(key)
        this.#gone.set(entry.facts.id, (this.#serial += 1))
      }
    for (const key of this.#strange.keys()) if (!keys.has(key)) this.#strange.delete(key)
    this.#seen = files.length
    return files
  }

  /** What no longer holds is taken back at once and worked out first, then what holds for another day. */
  #begin(library: Library): void {
    const basis = basisOf(library)
    const today = todayIn(this.#options.now())
    const first: SeenFile[] = []
    const later: SeenFile[] = []
    for (const file of this.#look()) {
      const entry = this.#noted.get(file.key)?.entry
      const row = entry?.row ?? null
      const holds = entry !== undefined && entry.mark === file.mark && row?.basis === basis(entry.uses)
      if (!holds) {
        if (entry !== undefined && row !== null) this.#note({ ...entry, row: null })
        first.push(file)
      } else if (row?.asOf !== today(entry.timeZone)) later.push(file)
    }
    this.#round = { library, basis }
    this.#queue = []
    this.#enqueue([...first, ...later])
  }

  /** Puts files behind those that wait already. */
  #enqueue(files: readonly SeenFile[]): void {
    const queued = new Set(this.#queue.map((file) => file.key))
    const more = files.filter((file) => !queued.has(file.key)).toReversed()
    this.#queue = [...more, ...this.#queue]
    if (this.#queue.length > 0 && !this.#running) void this.#work()
  }

  /** Takes files from the queue, breathing after each, so that questions are answered meanwhile. */
  async #work(): Promise<void> {
    this.#running = true
    while (this.#queue.length > 0) {
      await breathe()
      if (this.#closed) return
      const file = this.#queue.pop()
      if (file !== undefined) this.#read(file)
      if (this.#fresh.length >= BATCH) this.#save()
    }
    this.#save()
    this.#running = false
  }

  #read(file: SeenFile, round = this.#round): void {
    const reading = readSite(file)
    if (reading.state === 'moving') return
    if (reading.state === 'strange') {
      this.#strange.set(file.key, reading.newer)
      return
    }
    this.#strange.delete(file.key)
    const { entry, site } = reading
    const row = round === null ? null : this.#rowOf(site, entry, round)
    this.#note({ ...entry, row })
    this.#fresh.push({ ...entry, row })
  }

  #rowOf(site: Parameters<typeof siteNotes>[0], entry: Entry, { library, basis }: Round): Entry['row'] {
    const dayOf = (instant: string): string => dayIn(instant, site.timeZone)
    const asOf = dayOf(this.#options.now())
    const { row, outlook } = siteNotes(site, library, asOf, dayOf)
    return { asOf, basis: basis(entry.uses), outlook, text: packRow(row) }
  }

  #note(entry: Entry): void {
    // anew at the end, so that the order stays that of the serials
    this.#noted.delete(entry.key)
    this.#gone.delete(entry.facts.id)
    this.#noted.set(entry.key, { entry, serial: (this.#serial += 1) })
  }

  #save(): void {
    const fresh = this.#fresh
    this.#fresh = []
    this.#file.add(fresh, () => [...this.#noted.values()].map(({ entry }) => entry))
  }
}

/** Today by time zone, each looked up once. */
export function todayIn(now: string): (timeZone: string) => string {
  const days = new Map<string, string>()
  return (timeZone) => {
    const known = days.get(timeZone) ?? dayIn(now, timeZone)
    days.set(timeZone, known)
    return known
  }
}
