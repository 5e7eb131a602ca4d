import type { Call } from '#core/contract/contract'
import { sentence } from '#core/messages/sentence'
import type { Day, Id, Instant, Instrument, Product, Settings } from '#core/records/index'
import { announcer } from './announcer.svelte'
import { editOf, type Part } from './history.svelte'
import { mergeSaves, type SaveState } from './save-state'
import type { SavedDocument } from './saved-document.svelte'
import type { LibraryContent, LibraryName, Workspace } from './workspace.svelte'

/** What a screen works with when it shows no particular site: the library, undo, and the clock. */
export class Session {
  constructor(readonly workspace: Workspace) {}

  get call(): Call {
    return this.workspace.call
  }

  get products(): readonly Product[] {
    return this.workspace.library.products.content
  }

  get instruments(): readonly Instrument[] {
    return this.workspace.library.instruments.content
  }

  get settings(): Settings {
    return this.workspace.library.settings.content
  }

  /** The documents this screen shows, whole: undo stays within them. */
  protected get scope(): ReadonlySet<string> {
    return new Set(['products', 'instruments', 'settings'])
  }

  applyLibrary<N extends LibraryName>(
    document: N,
    label: string,
    change: (content: LibraryContent<N>) => LibraryContent<N>,
    join: string | null = null,
  ): void {
    const target: SavedDocument<LibraryContent<N>> = this.workspace.libraryDocument(document)
    this.edit(label, [editOf(target, change)], join)
  }

  /** One undo step over one or several documents. */
  protected edit(label: string, edits: readonly Part[], join: string | null): void {
    const parts = edits.filter((part) => part.before !== part.after)
    if (parts.length === 0) return
    // an offer to undo means the edit it came with, and no later one
    announcer.clear()
    for (const part of parts) part.document.set(part.after as never)
    this.workspace.history.record({ label, parts, join })
  }

  get canUndo(): boolean {
    return this.workspace.history.nextUndo(this.scope) !== null
  }

  get canRedo(): boolean {
    return this.workspace.history.nextRedo(this.scope) !== null
  }

  /** What undo would take back, in the words of the edit. */
  get undoLabel(): string | null {
    return this.workspace.history.nextUndo(this.scope)?.label ?? null
  }

  get redoLabel(): string | null {
    return this.workspace.history.nextRedo(this.scope)?.label ?? null
  }

  /** Returns the label of what was taken back, or null when there was nothing. */
  undo(): string | null {
    announcer.clear()
    return this.workspace.history.undo(this.scope)?.label ?? null
  }

  redo(): string | null {
    announcer.clear()
    return this.workspace.history.redo(this.scope)?.label ?? null
  }

  get save(): SaveState {
    return mergeSaves(
      this.workspace.documents.map((document) => document.save),
      sentence,
    )
  }

  now(): Instant {
    return this.workspace.clock.now()
  }

  get today(): Day {
    return this.workspace.clock.today(null)
  }

  newId(): Id {
    return crypto.randomUUID()
  }
}
