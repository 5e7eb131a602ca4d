import { afterPaint } from './after-paint'

/** How much of a long list may be drawn: a screenful at once, the rest frame by frame, so that no key waits for it. */
export class Gradual {
  drawn = $state(0)
  #run = 0

  /** `atOnce`: what is drawn at once, and by how much more each frame; it should take some milliseconds. */
  constructor(private readonly atOnce = 20) {
    this.drawn = atOnce
  }

  /** Begins anew, up to `most`. Called before what is to be drawn is (`$effect.pre`), or all of it is drawn first. */
  async restart(most: number): Promise<void> {
    const mine = (this.#run += 1)
    this.drawn = Math.min(this.atOnce, most)
    while (this.drawn < most) {
      await afterPaint()
      if (mine !== this.#run) return
      this.drawn = Math.min(most, this.drawn + this.atOnce)
    }
  }
}
