import { difference } from '#core/documents/changes'

/** Anything an edit can be undone in. */
export interface Undoable {
  /** stable name of the document, `site:ID` or `products` */
  readonly name: string
  readonly content: unknown
  /** sets the content as an edit of its own, to be saved */
  set(content: never): void
}

export interface Part {
  readonly document: Undoable
  readonly before: unknown
  readonly after: unknown
}

/** An edit of one document, worked out and not made yet. */
export const editOf = <T>(document: Undoable & { readonly content: T }, change: (content: T) => T): Part => ({
  document,
  before: document.content,
  after: change(document.content),
})

export interface Step {
  readonly label: string
  readonly parts: readonly Part[]
  readonly join: string | null
}

const LIMIT = 1000

/**
 * All edits of this window in order of time, over all documents. A screen undoes the last edit that touched the
 * documents it shows; because it always shows documents whole, each document is undone strictly backwards.
 */
export class History {
  #done: readonly Step[] = $state.raw([])
  #undone: readonly Step[] = $state.raw([])
  #sealed = true

  /** Records an edit that was just made. Equal `join` and documents as the step before: one step. */
  record(step: Step): void {
    const last = this.#done.at(-1)
    const joins = !this.#sealed && step.join !== null && last?.join === step.join && sameDocuments(last, step)
    const merged = joins && last !== undefined ? { ...step, parts: joined(last, step) } : step
    const kept = joins ? this.#done.slice(0, -1) : this.#done
    this.#done = changesNothing(merged) ? kept : [...kept, merged].slice(-LIMIT)
    this.#undone = this.#undone.filter((undone) => !touchesAny(undone, names(step)))
    this.#sealed = false
  }

  /** The next edit starts a step of its own, whatever its `join`. */
  seal(): void {
    this.#sealed = true
  }

  nextUndo(scope: ReadonlySet<string>): Step | null {
    return nextIn(this.#done, scope)
  }

  nextRedo(scope: ReadonlySet<string>): Step | null {
    return nextIn(this.#undone, scope)
  }

  undo(scope: ReadonlySet<string>): Step | null {
    const step = this.nextUndo(scope)
    if (step === null) return null
    for (const part of step.parts) part.document.set(part.before as never)
    this.#done = this.#done.filter((other) => other !== step)
    this.#undone = [...this.#undone, step]
    this.#sealed = true
    return step
  }

  redo(scope: ReadonlySet<string>): Step | null {
    const step = this.nextRedo(scope)
    if (step === null) return null
    for (const part of step.parts) part.document.set(part.after as never)
    this.#undone = this.#undone.filter((other) => other !== step)
    this.#done = [...this.#done, step]
    this.#sealed = true
    return step
  }

  /** A document was replaced from outside: edits made to its former self can no longer be undone. */
  forget(name: string): void {
    this.#done = this.#done.filter((step) => !touchesAny(step, new Set([name])))
    this.#undone = this.#undone.filter((step) => !touchesAny(step, new Set([name])))
  }
}

const names = (step: Step): ReadonlySet<string> => new Set(step.parts.map((part) => part.document.name))

const touchesAny = (step: Step, scope: ReadonlySet<string>): boolean =>
  step.parts.some((part) => scope.has(part.document.name))

/** The last step that touches the scope; none when it also touches something out of sight. */
function nextIn(steps: readonly Step[], scope: ReadonlySet<string>): Step | null {
  const step = steps.findLast((candidate) => touchesAny(candidate, scope))
  return step !== undefined && step.parts.every((part) => scope.has(part.document.name)) ? step : null
}

const sameDocuments = (a: Step, b: Step): boolean =>
  a.parts.length === b.parts.length &&
  a.parts.every((part, index) => part.document === b.parts[index]?.document)

const joined = (first: Step, second: Step): readonly Part[] =>
  second.parts.map((part, index) => ({ ...part, before: first.parts[index]?.before ?? part.before }))

const changesNothing = (step: Step): boolean =>
  step.parts.every((part) => difference(part.before, part.after).length === 0)
