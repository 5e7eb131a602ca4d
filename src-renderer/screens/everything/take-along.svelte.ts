import { ARCHIVE_CHARACTERS, archiveOf } from '#core/documents/archive'
import { offerFile } from '../../state/offer-file'
import type { Session } from '../../state/session.svelte'
import { withLibrary } from './with-library'

type Stage =
  | { readonly kind: 'idle' }
  | { readonly kind: 'working'; readonly done: number; readonly of: number }
  | {
      readonly kind: 'done'
      readonly sites: number
      readonly files: number
      readonly left: readonly string[]
    }

/** What stands around the sites and between them. */
const FRAME = 1_000

/**
 * Every site, and all products and instruments, as one file for another computer or for a drawer; as several where one
 * would be larger than can be read in again.
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
    const left: string[] = []
    let part: string[] = []
    let length = FRAME
    let files = 0
    for (const [done, { id, name }] of sites.entries()) {
      this.stage = { kind: 'working', done, of: sites.length }
      const file = await this.session.call('site.export', { id })
      if (this.#stopped) return this.close()
      if (!file.ok) {
        left.push(name)
        continue
      }
      const { products, instruments } = this.session
      const text = (own: string): string =>
        part.length === 0 ? withLibrary(own, products, instruments) : own
      let next = text(file.value.text)
      if (part.length > 0 && length + next.length > this.most) {
        this.#save(part, (files += 1), true)
        part = []
        length = FRAME
        next = text(file.value.text)
      }
      part.push(next)
      length += next.length
    }
    if (part.length > 0) this.#save(part, (files += 1), files > 1)
    this.stage = { kind: 'done', sites: sites.length - left.length, files, left }
  }

  /** Asks until every file has been looked into: a site the host has not got to yet is a site all the same. */
  async #allSites(): Promise<readonly { readonly id: string; readonly name: string }[] | null> {
    for (;;) {
      const list = await this.session.call('sites.list', {})
      if (this.#stopped || !list.ok) return null
      const { sites, waiting } = list.value
      if (waiting === 0) return sites.filter((site) => site.state === 'good')
      this.stage = { kind: 'working', done: 0, of: sites.length + waiting }
      await new Promise((resolve) => setTimeout(resolve, 200))
    }
  }

  #save(part: readonly string[], number: number, isOneOfMany: boolean): void {
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
