export interface Announcement {
  readonly text: string
  /** takes the thing back; offered as a button beside the words */
  readonly undo: (() => void) | null
}

const SHOWN = 12_000

/** One short message at a time, for things that happened out of sight. Never needed to go on. */
export class Announcer {
  current: Announcement | null = $state.raw(null)
  #timer: ReturnType<typeof setTimeout> | null = null

  say(text: string, undo: (() => void) | null = null): void {
    this.current = { text, undo }
    if (this.#timer !== null) clearTimeout(this.#timer)
    this.#timer = setTimeout(() => this.clear(), SHOWN)
  }

  /** Somebody went on to another screen: what only told something has been read; an offer to undo stays. */
  passOn(): void {
    if (this.current?.undo === null) this.clear()
  }

  clear(): void {
    this.current = null
  }
}

export const announcer = new Announcer()
