import { untrack } from 'svelte'
import { difference } from '#core/documents/changes'

export interface PartsDraftOptions<Parts, Whole> {
  /** the value in the record now */
  readonly whole: () => Whole
  readonly split: (whole: Whole) => Parts
  /** what the record holds for these parts; for parts that are not all there, its "nothing" */
  readonly join: (parts: Parts) => Whole
  readonly commit: (whole: Whole, what: string) => void
}

/**
 * Several boxes that make one value together, such as a low, a target and a high limit. The record holds the value only
 * while all parts are there; until then the parts live here. When the record changes from elsewhere (undo, another
 * screen), the parts follow it, also to nothing.
 */
export class PartsDraft<Parts extends object, Whole> {
  parts: Parts = $state.raw() as Parts
  #committed: Whole

  constructor(private readonly options: PartsDraftOptions<Parts, Whole>) {
    this.#committed = untrack(() => options.whole())
    this.parts = options.split(this.#committed)
  }

  /** Call in an effect with the value of the record. */
  follow(whole: Whole): void {
    untrack(() => {
      if (difference([whole], [this.#committed]).length === 0) return
      this.#committed = whole
      this.parts = this.options.split(whole)
    })
  }

  put(change: Partial<Parts>, what: string): void {
    this.parts = { ...this.parts, ...change }
    this.#committed = this.options.join(this.parts)
    this.options.commit(this.#committed, what)
  }
}
