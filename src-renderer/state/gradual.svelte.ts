import { afterPaint } from './after-paint'

/** What is drawn at once of a long list, and by how much more each frame: each takes some milliseconds. */
const AT_ONCE = 20

/** How much of a long list may be drawn: a screenful at once, the rest frame by frame, so that no key waits for it. */
export class Gradual {
  drawn = $state(AT_ONCE)
  #run = 0

  /** Begins anew, up to `most`. */
  async restart(most: number): Promise<void> {
    const mine = (this.#run += 1)
    this.drawn = Math.min(AT_ONCE, most)
    while (this.drawn < most) {
      await afterPaint()
      if (mine !== this.#run) return
      this.drawn = Math.min(most, this.drawn + AT_ONCE)
    }
  }
}
