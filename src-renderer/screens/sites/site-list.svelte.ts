import type { Method, Output, SiteRow } from '#core/contract/contract'
import { sentence } from '#core/messages/sentence'
import type { Outcome } from '#core/outcome'
import type { Problem } from '#core/problem'
import type { Id, Instant } from '#core/records/index'
import { newSite } from '../../commands/setup/new-site'
import { announcer } from '../../state/announcer.svelte'
import { offerFile } from '../../state/offer-file'
import type { Session } from '../../state/session.svelte'
import { Outlooks } from './outlooks.svelte'

export type GoodRow = Extract<SiteRow, { readonly state: 'good' }>
type Reply<M extends Method> = Promise<Outcome<Output<M>>>
export interface RemovedSite {
  readonly id: Id
  readonly name: string
  readonly removedAt: Instant
}

/** The sites found by `words`; `rows` holds the first of them. */
export interface Look extends Output<'sites.view'> {
  readonly words: string
}

/** Where the keyboard belongs after the list has changed: a site, what now stands at a place of it, or its first line. */
export type Lead = { readonly id: Id } | { readonly index: number }

/** between two looks at a list that is still being read */
const ASK_EVERY_MS = 1000
/** Rows asked for together. */
export const PAGE = 100
/** Rows whose signs are waited for, a moment at most, so that no row grows under the hand. */
const FIRST = 12
const MOMENT_MS = 150

const LOCALE = new Intl.Collator().resolvedOptions().locale

/** The list of sites as far as it is shown, and what can be done to it. Finding and ordering is the host's. */
export class SiteList {
  look: Look | null = $state.raw(null)
  removed: readonly RemovedSite[] = $state.raw([])
  problem: Problem | null = $state.raw(null)
  busy = $state(false)
  readonly outlooks: Outlooks
  #words = ''
  #looking: Promise<void> | null = null
  #asking: Promise<void> | null = null
  #left = false

  constructor(
    private readonly session: Session,
    private readonly lead: (to: Lead) => void = () => {},
  ) {
    this.outlooks = new Outlooks(session)
  }

  async load(): Promise<void> {
    // what was typed a moment ago on a site must show in its row
    await this.session.workspace.flush()
    const [, removed] = await Promise.all([this.#view(''), this.session.call('sites.removed', {})])
    if (removed.ok) this.removed = removed.value.sites
    // keys typed while all this was on its way
    await this.find(this.#words)
    // sites still being read come in by themselves: whoever waits for the list need not wait for them
    this.#asking ??= this.#askAgain().finally(() => {
      this.#asking = null
    })
  }

  /** The screen goes. */
  leave(): void {
    this.#left = true
  }

  /** Shows the sites with these words in their name. Keys typed while the host looks are answered in one. */
  async find(words: string): Promise<void> {
    this.#words = words
    if (this.#looking !== null || this.look === null) return
    while (this.look.words !== this.#words) {
      this.#looking = this.#view(this.look.version)
      await this.#looking
      if (this.problem !== null) break
    }
    this.#looking = null
  }

  /** Shows more of the sites found. */
  async more(): Promise<void> {
    const { look } = this
    if (look === null) return
    const more = await this.#run(this.#ask(look.words, look.version, look.rows.length, PAGE))
    if (more === null || this.look !== look) return
    if (more.version === look.version) this.look = { ...look, rows: [...look.rows, ...more.rows] }
    else await this.#view('')
  }

  #ask(words: string, version: string, from: number, count: number): Reply<'sites.view'> {
    return this.session.call('sites.view', { words, locale: LOCALE, version, from, count })
  }

  async #view(version: string): Promise<void> {
    const words = this.#words
    const same = words === this.look?.words
    const count = same ? Math.min(1000, Math.max(PAGE, this.look?.rows.length ?? 0)) : PAGE
    const found = await this.#ask(words, version, 0, count)
    if (!found.ok) {
      this.problem = found.problem
      return
    }
    const first = this.outlooks.want(found.value.rows.slice(0, FIRST))
    await Promise.race([first, new Promise((go) => setTimeout(go, MOMENT_MS))])
    this.look = { ...found.value, words }
  }

  async #askAgain(): Promise<void> {
    while ((this.look?.waiting ?? 0) > 0 && !this.#left) {
      await new Promise((go) => setTimeout(go, ASK_EVERY_MS))
      if (this.#left) break
      await this.#view('')
      if (this.problem !== null) break
      await this.find(this.#words)
    }
  }

  /** Makes an empty site and gives its id, or null when it could not be kept. */
  async create(name: string): Promise<Id | null> {
    const id = this.session.newId()
    const timeZone = Intl.DateTimeFormat().resolvedOptions().timeZone
    const site = newSite({ id, name: name.trim(), timeZone, settings: this.session.settings })
    return (await this.#run(this.session.call('site.create', { site }))) === null ? null : id
  }

  async addDemo(): Promise<void> {
    this.busy = true
    const added = await this.#run(this.session.call('demo.add', {}))
    if (added !== null) {
      await this.session.workspace.refreshLibrary()
      announcer.say(`Added ${added.ids.length} demo sites with their products and instruments.`)
    }
    await this.load()
    this.busy = false
    if (added !== null) this.#leadTo({ index: 0 })
  }

  async remove(row: GoodRow): Promise<void> {
    await this.session.workspace.flush()
    const index = this.#indexOf(row.id)
    if ((await this.#run(this.session.call('site.remove', { id: row.id }))) === null) return
    this.session.workspace.closeSite(row.id)
    announcer.say(`Removed ${row.name}.`, () => void this.restore(row.id, row.name))
    await this.load()
    this.#leadTo({ index })
  }

  async restore(id: Id, name: string): Promise<void> {
    if ((await this.#run(this.session.call('site.restore', { id }))) === null) return
    announcer.say(`${name} is back.`)
    await this.load()
    this.#leadTo({ id })
  }

  async recover(id: string): Promise<void> {
    if ((await this.#run(this.session.call('site.recover', { id }))) === null) return
    announcer.say('The last good version is back in place. The damaged file is kept beside it.')
    await this.load()
    this.#leadTo({ id })
  }

  /** A damaged site goes, and its damaged file stays; what was good of it can be brought back like any removed site. */
  async dismissDamaged(id: string, name: string): Promise<void> {
    const index = this.#indexOf(id)
    if ((await this.#run(this.session.call('site.remove', { id }))) === null) return
    announcer.say(`${name} is off the list. The damaged file is still in the data folder.`)
    await this.load()
    this.#leadTo({ index })
  }

  async export(row: GoodRow): Promise<void> {
    await this.session.workspace.flush()
    const file = await this.#run(this.session.call('site.export', { id: row.id }))
    if (file !== null) offerFile(file.fileName, file.text)
  }

  #indexOf(id: string): number {
    return Math.max(0, this.look?.rows.findIndex((row) => row.id === id) ?? 0)
  }

  #leadTo(to: Lead): void {
    const lead = (): void => {
      if (!this.#left) this.lead(to)
    }
    // at once where there are rows: a screen that moves later moves under the hand
    if ((this.look?.rows.length ?? 0) > 0 || this.#asking === null) lead()
    else void this.#asking.then(lead)
  }

  dismiss(): void {
    this.problem = null
  }

  async #run<T>(reply: Promise<Outcome<T>>): Promise<T | null> {
    const outcome = await reply
    this.problem = outcome.ok ? null : outcome.problem
    return outcome.ok ? outcome.value : null
  }

  get sentence(): string | null {
    return this.problem === null ? null : sentence(this.problem)
  }
}
