/** What a watch gives the ear and the hand. */
export interface Signals {
  /** called in the tap that starts the watch: browsers let sound begin only there */
  readonly ready: () => void
  readonly tap: () => void
  /** three short ticks and a long tone, ending `seconds` from now; gives back how to call it off */
  readonly countTo: (seconds: number) => () => void
}

export const silent: Signals = {
  ready: () => undefined,
  tap: () => undefined,
  countTo: () => () => undefined,
}

const TICK_HZ = 880
const TONE_HZ = 1320

/**
 * Sound made on the spot by the audio clock, not by page timers: it comes on time even when the tab sleeps. Three ticks
 * before zero let the hand go with the tone instead of after it.
 */
export class Sounds implements Signals {
  #context: AudioContext | null = null
  readonly #on: () => boolean

  constructor(on: () => boolean) {
    this.#on = on
  }

  ready = (): void => {
    if (!this.#on()) return
    try {
      this.#context ??= new AudioContext()
      void this.#context.resume()
    } catch {
      // a machine without sound: the flash and the big number remain
      this.#context = null
    }
    this.tap()
  }

  tap = (): void => {
    const context = this.#context
    if (context !== null && this.#on()) this.#beep(context, context.currentTime, TICK_HZ, 0.04)
  }

  countTo = (seconds: number): (() => void) => {
    const context = this.#context
    if (context === null || !this.#on()) return () => undefined
    const zero = context.currentTime + seconds
    const ticks = [3, 2, 1]
      .filter((before) => before < seconds)
      .map((before) => this.#beep(context, zero - before, TICK_HZ, 0.08))
    const all = [...ticks, this.#beep(context, zero, TONE_HZ, 1)]
    return () => all.forEach((oscillator) => oscillator.stop())
  }

  #beep(context: AudioContext, at: number, hertz: number, seconds: number): OscillatorNode {
    const oscillator = new OscillatorNode(context, { frequency: hertz })
    const gain = new GainNode(context, { gain: 0 })
    // a ramp instead of a step, which would click
    gain.gain.setValueAtTime(0, at)
    gain.gain.linearRampToValueAtTime(0.4, at + 0.01)
    gain.gain.setValueAtTime(0.4, at + seconds - 0.01)
    gain.gain.linearRampToValueAtTime(0, at + seconds)
    oscillator.connect(gain).connect(context.destination)
    oscillator.start(at)
    oscillator.stop(at + seconds)
    return oscillator
  }
}
