import { difference, type Change } from '#core/documents/changes'
import type { Outcome } from '#core/outcome'
import type { Problem } from '#core/problem'
import type { Instant } from '#core/records/index'
import type { Undoable } from './history.svelte'
import { mergeThreeWay } from './merge'
import type { UnsentStore } from './unsent'

export interface Loaded<T> {
  readonly document: T
  readonly revision: number
}

/** How one document reaches the host. */
export interface Pipe<T> {
  readonly send: (
    base: number,
    changes: readonly Change[],
  ) => Promise<Outcome<{ readonly revision: number; readonly savedAt: Instant }>>
  readonly load: () => Promise<Outcome<Loaded<T>>>
}

export type DocumentSave =
  | { readonly kind: 'saved'; readonly at: Instant | null }
  | { readonly kind: 'waiting' }
  | { readonly kind: 'saving' }
  | { readonly kind: 'not-saved'; readonly problem: Problem }

/** Rest after the last edit before it is saved, and the longest an edit waits while others keep coming. ms */
const REST = 500
const LONGEST = 2000
const RETRIES = [1000, 2000, 5000, 10_000] as const

/**
 * A document with its unsaved edits. Edits show at once and are sent after a short rest; what the host has not
 * acknowledged stays here, and in the unsent store, until it has. Problems become visible state and are tried again.
 */
export class SavedDocument<T> implements Undoable {
  #content: T = $state.raw() as T
  save: DocumentSave = $state.raw({ kind: 'saved', at: null })
  /** what the host holds, when both sides changed the same place and a person must choose */
  conflict: Loaded<T> | null = $state.raw(null)

  #saved: T
  #revision: number
  #timer: ReturnType<typeof setTimeout> | null = null
  #waitingSince: number | null = null
  #sending: Promise<void> | null = null
  #failures = 0
  /** called when the content was replaced by somebody else's, so that undo steps of its former self are dropped */
  onReplaced: () => void = () => {}

  constructor(
    readonly name: string,
    loaded: Loaded<T>,
    private readonly pipe: Pipe<T>,
    private readonly unsent: UnsentStore,
  ) {
    this.#content = loaded.document
    this.#saved = loaded.document
    this.#revision = loaded.revision
    const kept = unsent.read<T>(name)
    if (kept !== null) this.#resume(kept.base, kept.mine)
  }

  get content(): T {
    return this.#content
  }

  get unsaved(): boolean {
    return difference(this.#saved, this.#content).length > 0
  }

  set(content: T): void {
    this.#content = content
    if (this.save.kind === 'saved') this.save = { kind: 'waiting' }
    this.#schedule()
  }

  /** Sends what is not saved yet, now. Resolves when the answer is here. */
  async flush(): Promise<void> {
    if (this.#timer !== null) clearTimeout(this.#timer)
    this.#timer = null
    // one message at a time: a second one on the same revision would look like somebody else's
    while (this.#sending !== null) await this.#sending
    if (this.conflict !== null) return
    if (!this.unsaved) {
      if (this.save.kind !== 'saved') this.save = { kind: 'saved', at: null }
      return
    }
    this.#sending = this.#send().finally(() => {
      this.#sending = null
    })
    await this.#sending
  }

  /** Keeps unsent edits where a reload of the page finds them. */
  park(): void {
    if (this.unsaved) this.unsent.write(this.name, { base: this.#saved, mine: this.#content })
  }

  /** Brings in what the host holds now, keeping edits of ours that do not clash. */
  async refresh(): Promise<void> {
    if (this.unsaved || this.#sending !== null) return
    const loaded = await this.pipe.load()
    if (!loaded.ok || this.unsaved) return
    this.#take(loaded.value)
  }

  /** Settles a conflict: our version over theirs, or theirs in place of ours. */
  async settle(choice: 'mine' | 'theirs'): Promise<void> {
    const theirs = this.conflict
    if (theirs === null) return
    this.conflict = null
    this.#saved = theirs.document
    this.#revision = theirs.revision
    if (choice === 'theirs') this.#content = theirs.document
    this.onReplaced()
    this.#forgetUnsent()
    this.save = { kind: 'waiting' }
    await this.flush()
  }

  #schedule(delay = REST): void {
    const now = Date.now()
    this.#waitingSince ??= now
    if (this.#timer !== null) clearTimeout(this.#timer)
    const wait = Math.max(0, Math.min(delay, this.#waitingSince + Math.max(LONGEST, delay) - now))
    this.#timer = setTimeout(() => void this.flush(), wait)
  }

  async #send(): Promise<void> {
    const sent = this.#content
    this.#waitingSince = null
    if (this.save.kind !== 'not-saved') this.save = { kind: 'saving' }
    const reply = await this.pipe.send(this.#revision, difference(this.#saved, sent))
    if (reply.ok) {
      this.#saved = sent
      this.#revision = reply.value.revision
      this.#failures = 0
      this.#forgetUnsent()
      if (this.#content === sent) this.save = { kind: 'saved', at: reply.value.savedAt }
      else this.#waitAgain(REST)
      return
    }
    if (reply.problem.code === 'document-changed-elsewhere') return this.#reconcile(reply.problem)
    this.#failed(reply.problem)
  }

  async #reconcile(problem: Problem): Promise<void> {
    const loaded = await this.pipe.load()
    if (!loaded.ok) return this.#failed(loaded.problem)
    const merged = mergeThreeWay(this.#saved, this.#content, loaded.value.document)
    if (merged === null) {
      this.conflict = loaded.value
      this.save = { kind: 'not-saved', problem }
      this.park()
      return
    }
    this.#saved = loaded.value.document
    this.#revision = loaded.value.revision
    this.#content = merged.document
    this.onReplaced()
    this.#waitAgain(0)
  }

  #failed(problem: Problem): void {
    this.save = { kind: 'not-saved', problem }
    this.park()
    const delay = RETRIES[Math.min(this.#failures, RETRIES.length - 1)] ?? REST
    this.#failures += 1
    this.#schedule(delay)
  }

  #waitAgain(delay: number): void {
    this.save = { kind: 'waiting' }
    this.#schedule(delay)
  }

  #take(loaded: Loaded<T>): void {
    const changed = difference(this.#saved, loaded.document).length > 0
    this.#revision = loaded.revision
    if (!changed) return
    this.#saved = loaded.document
    this.#content = loaded.document
    this.onReplaced()
  }

  #resume(base: T, mine: T): void {
    const merged = mergeThreeWay(base, mine, this.#saved)
    if (merged === null) {
      this.conflict = { document: this.#saved, revision: this.#revision }
      this.#content = mine
      this.save = { kind: 'not-saved', problem: { code: 'document-changed-elsewhere', document: this.name } }
      return
    }
    if (difference(this.#saved, merged.document).length === 0) return this.#forgetUnsent()
    this.#content = merged.document
    this.#waitAgain(0)
  }

  #forgetUnsent(): void {
    this.unsent.remove(this.name)
  }
}
