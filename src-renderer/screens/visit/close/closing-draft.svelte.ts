import type { Day, Id } from '#core/records/index'
import type { Keep } from '../watch/stopwatch.svelte'

interface Draft {
  readonly customerName: string
  readonly signedBy: string | null
  readonly nextVisitOn: Day | null
  readonly nextChosen: boolean
}

const EMPTY: Draft = { customerName: '', signedBy: null, nextVisitOn: null, nextChosen: false }

/** Names and next visit as entered before the visit is closed; kept on this computer until then. */
export class ClosingDraft {
  #draft: Draft = $state.raw(EMPTY)
  readonly #key: string

  constructor(
    visitId: Id,
    private readonly keep: Keep,
  ) {
    this.#key = `dosewright.visit.${visitId}.closing`
    this.#draft = read(keep.getItem(this.#key))
  }

  get value(): Draft {
    return this.#draft
  }
  set(change: Partial<Draft>): void {
    this.#draft = { ...this.#draft, ...change }
    this.keep.setItem(this.#key, JSON.stringify(this.#draft))
  }
  clear(): void {
    this.keep.removeItem(this.#key)
  }
}

function read(text: string | null): Draft {
  try {
    const value: unknown = JSON.parse(text ?? '{}')
    return typeof value === 'object' && value !== null ? { ...EMPTY, ...value } : EMPTY
  } catch {
    return EMPTY
  }
}
