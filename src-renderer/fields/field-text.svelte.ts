import { untrack } from 'svelte'
import type { Outcome } from '#core/outcome'
import type { Problem } from '#core/problem'

export interface FieldTextOptions<T> {
  /** the value in the record now */
  readonly value: () => T | null
  readonly parse: (text: string) => Outcome<T>
  /** how a value stands in the box when nobody is typing */
  readonly show: (value: T) => string
  readonly same: (a: T, b: T) => boolean
  readonly commit: (value: T | null) => void
}

/**
 * The text of one box. While somebody types, the text is theirs: it is read at every key for live results, never
 * rewritten. On leaving, a text that could be read is shown in its plain form; one that could not stays as typed, and
 * the record holds no value meanwhile, so that no result stands on it.
 */
export class FieldText<T> {
  text = $state('')
  focused = $state(false)
  /** text at the moment the person came, for Esc */
  #atFocus = $state('')
  #valueAtFocus: T | null = null
  /** what this box last put into the record */
  #committed: T | null

  constructor(private readonly options: FieldTextOptions<T>) {
    const value = untrack(() => options.value())
    this.#committed = value
    this.text = value === null ? '' : options.show(value)
  }

  readonly outcome: Outcome<T> | null = $derived.by(() =>
    this.text.trim() === '' ? null : this.options.parse(this.text),
  )

  /** What is wrong with the text, once the person has left the box; while typing only what a next key cannot mend. */
  readonly problem: Problem | null = $derived.by(() => {
    if (this.outcome === null || this.outcome.ok) return null
    const mayYetBecome = this.focused && /^\s*[+\-−]?\s*[.,]?\s*$/u.test(this.text)
    return mayYetBecome ? null : this.outcome.problem
  })

  /** Whether the box holds typing that a native undo should act on. */
  readonly typed: boolean = $derived.by(() => this.focused && this.text !== this.#atFocus)

  /** Follows the record when it changed from elsewhere (undo, a choice, another screen). */
  follow(value: T | null): void {
    untrack(() => {
      if (this.#equal(value, this.#committed)) return
      this.#committed = value
      this.text = value === null ? '' : this.options.show(value)
      if (this.focused) this.#atFocus = this.text
    })
  }

  focus(): void {
    this.focused = true
    this.#atFocus = this.text
    this.#valueAtFocus = this.options.value()
  }

  input(text: string): void {
    this.text = text
    this.#commitText()
  }

  blur(): void {
    this.#commitText()
    this.focused = false
    if (this.outcome?.ok) this.text = this.options.show(this.outcome.value)
  }

  /** Esc: as it was when the person came. */
  revert(): void {
    this.text = this.#atFocus
    this.#commit(this.#valueAtFocus)
  }

  /** Puts a value in as if it had been typed: an answer to "which did you mean?", or a converted unit. */
  choose(value: T): void {
    this.text = this.options.show(value)
    this.#commit(value)
  }

  #commitText(): void {
    const outcome = this.outcome
    this.#commit(outcome !== null && outcome.ok ? outcome.value : null)
  }

  #commit(value: T | null): void {
    if (this.#equal(value, this.#committed)) return
    this.#committed = value
    this.options.commit(value)
  }

  #equal(a: T | null, b: T | null): boolean {
    return a === null || b === null ? a === b : this.options.same(a, b)
  }
}
