import type { Output } from '#core/contract/contract'
import { sentence } from '#core/messages/sentence'
import type { Problem } from '#core/problem'
import type { Id } from '#core/records/index'
import type { Session } from '../../state/session.svelte'

export type Comparison = Output<'site.compare'>
export type ImportChoice = 'keep-mine' | 'take-theirs' | 'keep-both' | 'merge'

/** Larger files are no site file of this program; they are not even read. */
const MOST_BYTES = 20_000_000

type Stage =
  | { readonly kind: 'idle' }
  | { readonly kind: 'reading'; readonly fileName: string }
  | { readonly kind: 'asking'; readonly fileName: string; readonly text: string; readonly found: Comparison }
  | { readonly kind: 'refused'; readonly fileName: string; readonly problem: Problem }

/** Brings a site file in. A site that is here already is compared first, and a person says what to do. */
export class SiteImport {
  stage: Stage = $state.raw({ kind: 'idle' })

  constructor(
    private readonly session: Session,
    private readonly done: (site: { readonly id: Id; readonly name: string }) => void,
  ) {}

  async take(file: { readonly name: string; readonly size: number; text(): Promise<string> }): Promise<void> {
    this.stage = { kind: 'reading', fileName: file.name }
    if (file.size > MOST_BYTES)
      return this.#refuse(file.name, {
        code: 'document-too-large',
        megabytes: Math.round(file.size / 1_000_000),
      })
    const text = await file.text()
    const found = await this.session.call('site.compare', { text })
    if (!found.ok) return this.#refuse(file.name, found.problem)
    if (found.value.state === 'new') return this.#import(file.name, text, {})
    this.stage = { kind: 'asking', fileName: file.name, text, found: found.value }
  }

  async answer(choice: ImportChoice, prefer: 'mine' | 'theirs'): Promise<void> {
    if (this.stage.kind !== 'asking') return
    const { fileName, text, found } = this.stage
    if (choice === 'keep-mine') return this.cancel()
    await this.#import(
      fileName,
      text,
      choice === 'merge' && found.state === 'differs' ? { choice, prefer } : { choice },
    )
  }

  cancel(): void {
    this.stage = { kind: 'idle' }
  }

  get refusal(): string | null {
    return this.stage.kind === 'refused' ? `${this.stage.fileName}: ${sentence(this.stage.problem)}` : null
  }

  async #import(
    fileName: string,
    text: string,
    how: { readonly choice?: ImportChoice; readonly prefer?: 'mine' | 'theirs' },
  ): Promise<void> {
    await this.session.workspace.flush()
    const imported = await this.session.call('site.import', { text, ...how })
    if (!imported.ok) return this.#refuse(fileName, imported.problem)
    this.stage = { kind: 'idle' }
    await this.session.workspace.refreshLibrary()
    this.done(imported.value)
  }

  #refuse(fileName: string, problem: Problem): void {
    this.stage = { kind: 'refused', fileName, problem }
  }
}
