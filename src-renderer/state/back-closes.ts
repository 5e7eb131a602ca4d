/** What an entry of the history says of itself: the dialogs open when it was made, and where it stands in the row. */
interface Mark {
  readonly dialogs: number
  readonly place: number
}

export type HistoryWindow = Pick<Window, 'history' | 'setTimeout' | 'clearTimeout' | 'addEventListener'> & {
  readonly location: Location
}

/** So long a link waits for a step through the history. */
const PATIENCE_MS = 2_000
/** A step that no event has answered by then is lost, as when the browser refused it. A busy machine takes seconds. */
const LOST_MS = 10_000

/**
 * Back closes the dialog on top instead of leaving the screen under it. Each open dialog has an entry of the history
 * under the same address: Back takes that entry away and the dialog with it, one at a time. A dialog closed in another
 * way takes its entry along. An entry whose dialog is gone is never stayed on: Forward onto one comes straight back, or
 * goes on to the screen behind it.
 */
export class BackCloses {
  readonly #dialogs: (() => void)[] = []
  #window: HistoryWindow | null = null
  #place = 0
  #last = 0
  #going: 'back' | 'on' | null = null
  #lost = 0
  #patience = 0
  /** the step takes longer than a link can wait */
  #slow = false
  #due = false
  readonly #waiting: (() => void)[] = []

  follow(window: HistoryWindow): void {
    this.#window = window
    const mark = markOf(window)
    if (mark === null) this.#write({ dialogs: 0, place: 0 })
    this.#place = this.#last = mark?.place ?? 0
    // a screen under a new address brings both events, and some browsers one of them only
    for (const event of ['popstate', 'hashchange'] as const)
      window.addEventListener(event, () => this.#arrived())
    window.addEventListener('click', (event) => this.#held(event), { capture: true })
    // loaded anew while a dialog was open: its entry is still there, the dialog is not
    this.#settleSoon()
  }

  /** A dialog has opened; `close` is what Back does. To be called with the result when it is closed or gone. */
  opened(close: () => void): () => void {
    this.#dialogs.push(close)
    this.#settleSoon()
    return () => {
      const index = this.#dialogs.indexOf(close)
      if (index < 0) return
      this.#dialogs.splice(index, 1)
      this.#settleSoon()
    }
  }

  /** Does it once the entries of closed dialogs are gone: a new address set before that would be walked away from. */
  whenSettled(action: () => void): void {
    if (this.#busy()) this.#waiting.push(action)
    else action()
  }

  /** A link pressed while the entry of a closed dialog is still on its way out waits, or the way out would undo it. */
  #held(event: MouseEvent): void {
    const window = this.#window
    const to = hashOf(event)
    if (window === null || to === null || !this.#busy()) return
    event.preventDefault()
    this.whenSettled(() => {
      window.location.hash = to
    })
  }

  #busy(): boolean {
    return this.#due || (this.#going !== null && !this.#slow)
  }

  #arrived(): void {
    const mark = this.#mark()
    // the second event of one arrival, or a new entry that was marked just now
    if (mark.place === this.#place) return this.#settleSoon()
    const forward = mark.place > this.#place
    const going = this.#going
    this.#stay(mark.place)
    const stale = mark.dialogs > this.#dialogs.length
    if (stale && this.#place < this.#last && (going === 'on' || (going === null && forward)))
      return this.#go(1)
    if (going === null) while (this.#dialogs.length > mark.dialogs) this.#dialogs.pop()?.()
    this.#settleSoon()
  }

  #settleSoon(): void {
    if (this.#due || this.#window === null) return
    this.#due = true
    // a dialog that gives way to another within one step keeps its entry
    this.#window.setTimeout(() => {
      this.#due = false
      this.#settle()
    }, 0)
  }

  #settle(): void {
    if (this.#going !== null) return
    const { dialogs } = this.#mark()
    const over = dialogs - this.#dialogs.length
    if (over > 0) return this.#go(-over)
    for (let more = dialogs + 1; more <= this.#dialogs.length; more += 1) {
      this.#place += 1
      this.#last = this.#place
      this.#window?.history.pushState({ dialogs: more, place: this.#place } satisfies Mark, '')
    }
    this.#act()
  }

  #act(): void {
    for (const action of this.#waiting.splice(0)) action()
  }

  /** The mark of the entry we are on. One without was made by a link or a typed address, after the one we were on. */
  #mark(): Mark {
    const mark = this.#window === null ? null : markOf(this.#window)
    if (mark !== null) return mark
    this.#stay(this.#place + 1)
    this.#last = this.#place
    const made = { dialogs: 0, place: this.#place }
    this.#write(made)
    return made
  }

  #go(steps: number): void {
    const window = this.#window
    if (window === null) return
    this.#going = steps > 0 ? 'on' : 'back'
    this.#slow = false
    this.#patience = window.setTimeout(() => {
      this.#slow = true
      this.#act()
    }, PATIENCE_MS)
    // until then its arrival is ours, however late: it is not Back pressed on a dialog that opened meanwhile
    this.#lost = window.setTimeout(() => {
      this.#going = null
      this.#settleSoon()
    }, LOST_MS)
    window.history.go(steps)
  }

  #stay(place: number): void {
    this.#window?.clearTimeout(this.#patience)
    this.#window?.clearTimeout(this.#lost)
    this.#going = null
    this.#place = place
    this.#last = Math.max(this.#last, place)
  }

  #write(mark: Mark): void {
    this.#window?.history.replaceState(mark, '')
  }
}

/** Where a plain click on a link within the page leads, or null. */
export function hashOf(event: MouseEvent): string | null {
  const link = event.target instanceof Element ? event.target.closest('a[href^="#"]') : null
  const plain = event.button === 0 && !(event.ctrlKey || event.metaKey || event.shiftKey || event.altKey)
  return link === null || !plain || event.defaultPrevented ? null : link.getAttribute('href')
}

function markOf(window: HistoryWindow): Mark | null {
  const state: unknown = window.history.state
  if (typeof state !== 'object' || state === null) return null
  const { dialogs, place } = state as Readonly<Record<string, unknown>>
  return typeof dialogs === 'number' && typeof place === 'number' ? { dialogs, place } : null
}

/** One per window. */
export const backCloses = new BackCloses()
