import { ARCHIVE_CHARACTERS, archiveOf, type RemovedFile } from '#core/documents/archive'
import { offerFile } from '../../state/offer-file'
import type { Session } from '../../state/session.svelte'
import { withLibrary } from './with-library'

type Stage =
  | { readonly kind: 'idle' }
  | { readonly kind: 'working'; readonly done: number; readonly of: number }
  | {
      readonly kind: 'done'
      readonly sites: number
      readonly removed: number
      readonly files: number
      readonly left: readonly string[]
    }

/** What stands around the sites and between them. */
const FRAME = 1_000

/** What stands around a site taken off the list. */
const BETWEEN = 100

interface Listed {
  readonly id: string
  readonly name: string
  readonly removedAt: string | null
}

/** One of several files, as it fills. */
interface Part {
  readonly sites: string[]
  readonly removed: RemovedFile[]
  readonly settings: string | null
  length: number
}

const startPart = (settings: string | null): Part => ({
  sites: [],
  removed: [],
  settings,
  length: FRAME + (settings?.length ?? 0),
})

/**
 * Every site, those taken off the list too, all products and instruments, and the settings, as one file for another
 * computer or for a drawer; as several where one would be larger than can be read in again.
 */
export class TakeAlong {
  stage: Stage = $state.raw({ kind: 'idle' })
  #stopped = false

  constructor(
    private readonly session: Pick<Session, 'call' | 'workspace' | 'products' | 'instruments' | 'today'>,
    private readonly offer: typeof offerFile = offerFile,
    private readonly most = ARCHIVE_CHARACTERS,
  ) {}

  async start(): Promise<void> {
    this.#stopped = false
    this.stage = { kind: 'working', done: 0, of: 0 }
    // what was typed a moment ago is part of what is taken along
    await this.session.workspace.flush()
    const sites = await this.#allSites()
    if (sites === null) return this.close()
    const gone = await this.#removedSites(sites)
    const settings = await this.session.call('settings.export', {})
    if (this.#stopped) return this.close()
    const left: string[] = settings.ok ? [] : ['the settings']
    let part = startPart(settings.ok ? settings.value.text : null)
    let files = 0
    const taken = { sites: 0, removed: 0 }
    for (const [done, { id, name, removedAt }] of [...sites, ...gone].entries()) {
      this.stage = { kind: 'working', done, of: sites.length + gone.length }
      const file = await this.session.call(removedAt === null ? 'site.export' : 'site.exportRemoved', { id })
      if (this.#stopped) return this.close()
      if (!file.ok) {
        left.push(removedAt === null ? name : `${name} (removed)`)
        continue
      }
      const { products, instruments } = this.session
      const holds = (): boolean => part.sites.length + part.removed.length > 0
      const text = (own: string): string => (holds() ? own : withLibrary(own, products, instruments))
      let next = text(file.value.text)
      if (holds() && part.length + next.length > this.most) {
        this.#save(part, (files += 1), true)
        part = startPart(null)
        next = text(file.value.text)
      }
      if (removedAt === null) part.sites.push(next)
      else part.removed.push({ removedAt, text: next })
      taken[removedAt === null ? 'sites' : 'removed'] += 1
      part.length += next.length + BETWEEN
    }
    if (part.sites.length + part.removed.length > 0) this.#save(part, (files += 1), files > 1)
    this.stage = { kind: 'done', ...taken, files, left }
  }

  /** Sites taken off the list, each once; one that stands on the list again is among the sites. */
  async #removedSites(sites: readonly Listed[]): Promise<readonly Listed[]> {
    const reply = await this.session.call('sites.removed', {})
    if (!reply.ok) return []
    const seen = new Set(sites.map(({ id }) => id))
    return reply.value.sites.filter(({ id }) => !seen.has(id) && seen.add(id))
  }

  /** Asks until every file has been looked into: a site the host has not got to yet is a site all the same. */
  async #allSites(): Promise<readonly Listed[] | null> {
    for (;;) {
      const list = await this.session.call('sites.list', {})
      if (this.#stopped || !list.ok) return null
      const { sites, waiting } = list.value
      if (waiting === 0)
        return sites
          .filter((site) => site.state === 'good')
          .map(({ id, name }) => ({ id, name, removedAt: null }))
      this.stage = { kind: 'working', done: 0, of: sites.length + waiting }
      await new Promise((resolve) => setTimeout(resolve, 200))
    }
  }

  #save(part: Part, number: number, isOneOfMany: boolean): void {
    const which = isOneOfMany ? `, part ${number}` : ''
    this.offer(`everything ${this.session.today}${which}.dosewright.json`, archiveOf(part).join(''))
  }

  stop(): void {
    this.#stopped = true
  }

  close(): void {
    this.stage = { kind: 'idle' }
  }
}
