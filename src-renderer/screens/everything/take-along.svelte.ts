import { archiveOf } from '#core/documents/archive'
import { offerFile } from '../../state/offer-file'
import type { Session } from '../../state/session.svelte'
import { withLibrary } from './with-library'

type Stage =
  | { readonly kind: 'idle' }
  | { readonly kind: 'working'; readonly done: number; readonly of: number }
  | { readonly kind: 'done'; readonly sites: number; readonly left: readonly string[] }

/** Every site, and all products and instruments, as one file for another computer or for a drawer. */
export class TakeAlong {
  stage: Stage = $state.raw({ kind: 'idle' })
  #stopped = false

  constructor(private readonly session: Session) {}

  async start(): Promise<void> {
    this.#stopped = false
    this.stage = { kind: 'working', done: 0, of: 0 }
    // what was typed a moment ago is part of what is taken along
    await this.session.workspace.flush()
    const list = await this.session.call('sites.list', {})
    if (this.#stopped || !list.ok) return this.close()
    const sites = list.value.sites.filter((site) => site.state === 'good')
    const files: string[] = []
    const left: string[] = []
    for (const [done, { id, name }] of sites.entries()) {
      this.stage = { kind: 'working', done, of: sites.length }
      const file = await this.session.call('site.export', { id })
      if (this.#stopped) return this.close()
      if (file.ok) files.push(file.value.text)
      else left.push(name)
    }
    const [first, ...others] = files
    if (first !== undefined) {
      const { products, instruments, today } = this.session
      const all = [withLibrary(first, products, instruments), ...others]
      offerFile(`everything ${today}.dosewright.json`, archiveOf(all).join(''))
    }
    this.stage = { kind: 'done', sites: files.length, left }
  }

  stop(): void {
    this.#stopped = true
  }

  close(): void {
    this.stage = { kind: 'idle' }
  }
}
