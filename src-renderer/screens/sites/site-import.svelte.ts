import type { Output } from '#core/contract/contract'
import { sentence } from '#core/messages/sentence'
import type { Outcome } from '#core/outcome'
import type { Problem } from '#core/problem'
import { textOf } from '../../client/long-text'
import type { Session } from '../../state/session.svelte'

export type Comparison = Output<'site.compare'>
export type Imported = Output<'site.import'>
export type ImportChoice = 'keep-mine' | 'take-theirs' | 'keep-both' | 'merge'
interface How {
  readonly choice?: ImportChoice
  readonly prefer?: 'mine' | 'theirs'
}

/** Where a site comes from: a file somebody chose, or one that lies in the team's folder. */
interface Source {
  readonly name: string
  readonly compare: () => Promise<Outcome<Comparison>>
  readonly bring: (how: How) => Promise<Outcome<Imported>>
  /** lies there until it is answered: "leave mine" is an answer, too, or it would be offered for ever */
  readonly offered: boolean
}

/** Larger files are no site file of this program; they are not even read. */
const MOST_BYTES = 20_000_000
/** ms; what is done sooner needs no word */
const SLOW_AFTER = 800

type Stage =
  | { readonly kind: 'idle' }
  | { readonly kind: 'reading'; readonly name: string }
  | { readonly kind: 'asking'; readonly source: Source; readonly found: Comparison }
  | { readonly kind: 'refused'; readonly name: string; readonly problem: Problem }

/** Brings a site in. One that is here already is compared first, and a person says what to do. */
export class SiteImport {
  stage: Stage = $state.raw({ kind: 'idle' })
  /** it takes long enough to say so, and to offer a way out */
  slow = $state(false)
  #slowly: ReturnType<typeof setTimeout> | undefined = undefined
  #stopped = false

  constructor(
    private readonly session: Session,
    private readonly done: (site: Imported, left: boolean) => void,
  ) {}

  async takeFile(file: File): Promise<void> {
    this.#begin(file.name)
    if (file.size > MOST_BYTES) {
      const megabytes = Math.round(file.size / 1_000_000)
      return this.#refuse(file.name, { code: 'document-too-large', megabytes })
    }
    const text = await textOf(file)
    const { call } = this.session
    await this.#take({
      name: file.name,
      compare: () => call('site.compare', { text }),
      bring: (how) => call('site.import', { text, ...how }),
      offered: false,
    })
  }

  async takeShared(file: string, name: string): Promise<void> {
    const { call } = this.session
    this.#begin(name)
    await this.#take({
      name,
      compare: () => call('shared.compare', { file }),
      bring: (how) => call('shared.take', { file, ...how }),
      offered: true,
    })
  }

  /** Not wanted here: it is not offered again until it changes. */
  async leaveShared(file: string): Promise<void> {
    const left = await this.session.call('shared.take', { file, choice: 'keep-mine' })
    if (left.ok) this.done(left.value, true)
    else this.#refuse(file, left.problem)
  }

  async answer(choice: ImportChoice, prefer: 'mine' | 'theirs'): Promise<void> {
    if (this.stage.kind !== 'asking') return
    const { source } = this.stage
    if (choice === 'keep-mine' && !source.offered) return this.cancel()
    await this.#bring(source, choice === 'merge' ? { choice, prefer } : { choice })
  }

  cancel(): void {
    this.#end({ kind: 'idle' })
  }

  /** Gives up a file that is being read. One that is in by then stays in, and is told of. */
  async stop(): Promise<void> {
    this.#stopped = true
    // a file still on its way to the host cannot be given up there yet, so it is said again
    while (this.stage.kind === 'reading' && this.#stopped) {
      await this.session.call('site.stopReading', {})
      await new Promise((resolve) => setTimeout(resolve, 200))
    }
  }

  get refusal(): string | null {
    return this.stage.kind === 'refused' ? `${this.stage.name}: ${sentence(this.stage.problem)}` : null
  }

  async #take(source: Source): Promise<void> {
    // what was typed a moment ago is part of what is compared
    await this.session.workspace.flush()
    if (this.#stopped) return this.cancel()
    const found = await source.compare()
    if (this.#stopped) return this.cancel()
    if (!found.ok) return this.#refuse(source.name, found.problem)
    if (found.value.state === 'new') return this.#bring(source, {})
    this.#end({ kind: 'asking', source, found: found.value })
  }

  async #bring(source: Source, how: How): Promise<void> {
    this.#begin(source.name)
    const imported = await source.bring(how)
    if (!imported.ok) return this.#stopped ? this.cancel() : this.#refuse(source.name, imported.problem)
    this.#end({ kind: 'idle' })
    await this.session.workspace.refreshLibrary()
    this.done(imported.value, how.choice === 'keep-mine')
  }

  #refuse(name: string, problem: Problem): void {
    this.#end({ kind: 'refused', name, problem })
  }

  #begin(name: string): void {
    if (this.stage.kind !== 'reading') {
      this.#stopped = false
      this.#slowly = setTimeout(() => (this.slow = true), SLOW_AFTER)
    }
    this.stage = { kind: 'reading', name }
  }

  #end(stage: Stage): void {
    clearTimeout(this.#slowly)
    this.slow = false
    this.stage = stage
  }
}
