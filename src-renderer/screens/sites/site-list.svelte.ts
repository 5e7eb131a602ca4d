import type { SiteRow } from '#core/contract/contract'
import { sentence } from '#core/messages/sentence'
import type { Problem } from '#core/problem'
import type { Id, Instant } from '#core/records/index'
import { newSite } from '../../commands/setup/new-site'
import { announcer } from '../../state/announcer.svelte'
import { offerFile } from '../../state/offer-file'
import type { Session } from '../../state/session.svelte'

export type GoodRow = Extract<SiteRow, { readonly state: 'good' }>
export interface RemovedSite {
  readonly id: Id
  readonly name: string
  readonly removedAt: Instant
}

/** between two looks at a list that is still being read */
const ASK_EVERY_MS = 1000

/** The list of sites, and what can be done to it. */
export class SiteList {
  rows: readonly SiteRow[] | null = $state.raw(null)
  removed: readonly RemovedSite[] = $state.raw([])
  /** files the host has not looked into yet */
  waiting = $state(0)
  problem: Problem | null = $state.raw(null)
  busy = $state(false)
  #asking = false
  #left = false

  constructor(private readonly session: Session) {}

  async load(): Promise<void> {
    // what was typed a moment ago on a site must show in its row
    await this.session.workspace.flush()
    const [list, removed] = await Promise.all([
      this.session.call('sites.list', {}),
      this.session.call('sites.removed', {}),
    ])
    if (list.ok) this.#show(list.value)
    else this.problem = list.problem
    if (removed.ok) this.removed = removed.value.sites
    if (!this.#asking) await this.#askAgain()
  }

  /** The screen goes. */
  leave(): void {
    this.#left = true
  }

  #show({ sites, waiting }: { readonly sites: readonly SiteRow[]; readonly waiting: number }): void {
    this.rows = sites
    this.waiting = waiting
  }

  async #askAgain(): Promise<void> {
    this.#asking = true
    while (this.waiting > 0 && !this.#left) {
      await new Promise((go) => setTimeout(go, ASK_EVERY_MS))
      if (this.#left) break
      const list = await this.session.call('sites.list', {})
      if (!list.ok) break
      this.#show(list.value)
    }
    this.#asking = false
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
  }

  async remove(row: GoodRow): Promise<void> {
    await this.session.workspace.flush()
    if ((await this.#run(this.session.call('site.remove', { id: row.id }))) === null) return
    this.session.workspace.closeSite(row.id)
    announcer.say(`Removed ${row.name}.`, () => void this.restore(row.id, row.name))
    await this.load()
  }

  async restore(id: Id, name: string): Promise<void> {
    if ((await this.#run(this.session.call('site.restore', { id }))) === null) return
    announcer.say(`${name} is back.`)
    await this.load()
  }

  async recover(id: string): Promise<void> {
    if ((await this.#run(this.session.call('site.recover', { id }))) === null) return
    announcer.say('The last good version is back in place. The damaged file is kept beside it.')
    await this.load()
  }

  /** A damaged site goes, and its damaged file stays; what was good of it can be brought back like any removed site. */
  async dismissDamaged(id: string, name: string): Promise<void> {
    if ((await this.#run(this.session.call('site.remove', { id }))) === null) return
    announcer.say(`${name} is off the list. The damaged file is still in the data folder.`)
    await this.load()
  }

  async export(row: GoodRow): Promise<void> {
    await this.session.workspace.flush()
    const file = await this.#run(this.session.call('site.export', { id: row.id }))
    if (file !== null) offerFile(file.fileName, file.text)
  }

  dismiss(): void {
    this.problem = null
  }

  async #run<T>(reply: Promise<{ ok: true; value: T } | { ok: false; problem: Problem }>): Promise<T | null> {
    const outcome = await reply
    this.problem = outcome.ok ? null : outcome.problem
    return outcome.ok ? outcome.value : null
  }

  get sentence(): string | null {
    return this.problem === null ? null : sentence(this.problem)
  }
}
