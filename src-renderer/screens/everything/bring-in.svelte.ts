import { ARCHIVE_CHARACTERS } from '#core/documents/archive'
import { megabytes } from '#core/documents/limits'
import { same } from '#core/documents/same'
import { sentence } from '#core/messages/sentence'
import type { Settings } from '#core/records/index'
import { announcer } from '../../state/announcer.svelte'
import type { Session } from '../../state/session.svelte'
import type { Comparison, ImportChoice } from '../sites/site-import.svelte'
import { OpeningArchive } from './opening-archive'

/** One site of the file, and what is to become of it. */
export type Item =
  | {
      readonly kind: 'site'
      readonly text: string
      readonly found: Comparison
      readonly choice: ImportChoice
      /** taken off the list where the file comes from: stays out unless somebody says otherwise */
      readonly removedAt: string | null
    }
  | { readonly kind: 'refused'; readonly what: 'site' | 'settings'; readonly why: string }

export interface Brought {
  readonly added: number
  readonly changed: number
  readonly unchanged: number
  readonly failed: readonly string[]
  /** those of the file are in force */
  readonly settings: boolean
  readonly stopped: boolean
}

type Stage =
  | { readonly kind: 'idle' }
  | { readonly kind: 'opening'; readonly done: number; readonly of: number }
  | { readonly kind: 'looking'; readonly done: number; readonly of: number }
  | { readonly kind: 'asking' }
  | { readonly kind: 'bringing'; readonly done: number; readonly of: number }
  | { readonly kind: 'done'; readonly brought: Brought }
  | { readonly kind: 'refused'; readonly why: string }

const AT_WORK: ReadonlySet<Stage['kind']> = new Set(['opening', 'looking', 'bringing'])

/**
 * Brings in a file that holds many sites: looks at each without changing anything, asks where something is here
 * already, then takes one after the other, so that there is progress to see and a moment to stop.
 */
export class BringIn {
  stage: Stage = $state.raw({ kind: 'idle' })
  items: readonly Item[] = $state.raw([])
  prefer: 'mine' | 'theirs' = $state('mine')
  /** what the file says of settings that differ from those here; null: nothing to choose */
  settings: Settings | null = $state.raw(null)
  settingsFrom: 'mine' | 'theirs' = $state('mine')
  #stopped = false
  #left = false
  #opening: OpeningArchive | null = null

  constructor(
    private readonly session: Session,
    private readonly done: () => void,
  ) {}

  readonly #found = $derived(this.items.filter((item) => item.kind === 'site'))
  readonly sites = $derived(this.#found.filter(({ removedAt }) => removedAt === null))
  /** removed there; one that is the same here needs no word */
  readonly removed = $derived(
    this.#found.filter(({ removedAt, found }) => removedAt !== null && found.state !== 'same'),
  )
  /** what is taken in hand when all is chosen */
  readonly chosen = $derived([...this.sites, ...this.removed.filter(({ choice }) => choice !== 'keep-mine')])
  readonly differing = $derived(this.sites.filter(({ found }) => found.state === 'differs'))
  readonly asks = $derived(
    [...this.differing, ...this.removed].some(
      ({ choice, found }) => choice === 'merge' && found.differences.some(({ asks }) => asks),
    ),
  )

  async takeFile(file: Blob): Promise<void> {
    this.#stopped = false
    this.#left = false
    this.#forget()
    this.stage = { kind: 'opening', done: 0, of: 0 }
    if (file.size > ARCHIVE_CHARACTERS)
      return this.#refuse(sentence({ code: 'document-too-large', megabytes: megabytes(file.size) }))
    this.#opening = new OpeningArchive(file, (done, of) => (this.stage = { kind: 'opening', done, of }))
    const opened = await this.#opening.contents
    this.#opening = null
    if (this.#stopped) return this.close()
    if (!opened.ok) return this.#refuse(sentence(opened.problem))
    await this.session.workspace.flush()
    const items: Item[] = []
    const { sites, removed, settings } = opened.value
    const files = [...sites.map((text) => ({ text, removedAt: null })), ...removed]
    for (const [done, { text, removedAt }] of files.entries()) {
      this.stage = { kind: 'looking', done, of: files.length }
      const found = await this.session.call('site.compare', { text })
      if (this.#stopped) return this.close()
      items.push(
        found.ok
          ? {
              kind: 'site',
              text,
              found: found.value,
              choice: removedAt === null ? 'merge' : 'keep-mine',
              removedAt,
            }
          : { kind: 'refused', what: 'site', why: sentence(found.problem) },
      )
    }
    if (settings !== null) {
      const read = await this.session.call('settings.read', { text: settings })
      if (!read.ok)
        items.push({ kind: 'refused', what: 'settings', why: `The settings: ${sentence(read.problem)}` })
      else if (!same(read.value.settings, this.session.settings)) this.settings = read.value.settings
    }
    if (this.#stopped) return this.close()
    this.items = items
    this.stage = { kind: 'asking' }
  }

  choose(item: Item, choice: ImportChoice): void {
    this.items = this.items.map((one) => (one === item && one.kind === 'site' ? { ...one, choice } : one))
  }

  chooseForAll(choice: ImportChoice): void {
    this.items = this.items.map((one) =>
      one.kind === 'site' && one.removedAt === null ? { ...one, choice } : one,
    )
  }

  async bring(): Promise<void> {
    const tally = { added: 0, changed: 0, unchanged: 0, failed: [] as string[] }
    const sites = this.chosen
    for (const [done, { text, found, choice }] of sites.entries()) {
      if (this.#stopped) break
      this.stage = { kind: 'bringing', done, of: sites.length }
      const isNew = found.state === 'new'
      const how = isNew ? {} : choice === 'merge' ? { choice, prefer: this.prefer } : { choice }
      // a site that stays as it is still brings products and instruments that are not here
      const reply = await this.session.call('site.import', { text, ...how })
      if (!reply.ok) tally.failed.push(`${found.name}: ${sentence(reply.problem)}`)
      else if (isNew) tally.added += 1
      else if (found.state === 'same' || choice === 'keep-mine') tally.unchanged += 1
      else if (choice === 'keep-both') tally.added += 1
      else tally.changed += 1
    }
    const settings = this.settingsFrom === 'theirs' && !this.#stopped ? this.settings : null
    // an edit like any other: it is saved, and can be taken back
    if (settings !== null) this.session.applyLibrary('settings', 'Settings from the file', () => settings)
    await this.session.workspace.refreshLibrary()
    this.done()
    this.stage = { kind: 'done', brought: { ...tally, settings: settings !== null, stopped: this.#stopped } }
    if (!this.#left) return
    announcer.say(`Stopped after ${tally.added} sites added and ${tally.changed} changed.`)
    this.close()
  }

  stop(): void {
    this.#stopped = true
    this.#opening?.stop()
    // nothing is written while they are looked at, so the site in hand need not be waited for
    if (this.stage.kind === 'looking') void this.session.call('site.stopReading', {})
  }

  /** The window over the page was closed: work in hand stops after the site it is at. */
  leave(): void {
    this.#left = true
    if (AT_WORK.has(this.stage.kind)) this.stop()
    else this.close()
  }

  close(): void {
    this.stage = { kind: 'idle' }
    this.#forget()
  }

  #forget(): void {
    this.items = []
    this.settings = null
    this.settingsFrom = 'mine'
  }

  #refuse(why: string): void {
    this.stage = { kind: 'refused', why }
  }
}
