import { SvelteMap } from 'svelte/reactivity'
import type { Id } from '#core/records/index'
import { Sounds } from '../watch/signals'
import { Stopwatch, type Keep, type Timed } from '../watch/stopwatch.svelte'

/** How long the line is held after the last bubble: common practice, no source. */
export const PRIME_SECONDS = 60

const SOUND = 'dosewright.sound'

/** Whether this computer is to sound; kept for the next visit. */
export class SoundSwitch {
  on = $state(true)
  constructor(private readonly keep: Keep) {
    this.on = keep.getItem(SOUND) !== 'off'
  }
  set(on: boolean): void {
    this.on = on
    this.keep.setItem(SOUND, on ? 'on' : 'off')
  }
}

/** The watches of one visit: one for the run, and one per pump that is priming meanwhile. */
export class Clocks {
  readonly sound: SoundSwitch
  readonly run: Stopwatch
  readonly #primes = new SvelteMap<Id, Stopwatch>()

  constructor(
    private readonly visitId: Id,
    pumpIds: readonly Id[],
    keep: Keep,
    heard: { readonly timed: (timed: Timed) => void; readonly primed: (pumpId: Id) => void },
  ) {
    this.sound = new SoundSwitch(keep)
    const signals = new Sounds(() => this.sound.on)
    this.run = new Stopwatch({ key: this.#key('run'), keep, signals, onZero: heard.timed })
    for (const pumpId of pumpIds) {
      const onZero = (): void => heard.primed(pumpId)
      this.#primes.set(
        pumpId,
        new Stopwatch({
          key: this.#key(pumpId),
          keep,
          signals: new Sounds(() => this.sound.on),
          onZero,
          patient: true,
        }),
      )
    }
  }

  #key = (name: string): string => `dosewright.watch.${this.visitId}.${name}`

  prime(pumpId: Id): Stopwatch | undefined {
    return this.#primes.get(pumpId)
  }

  release(): void {
    this.run.release()
    for (const watch of this.#primes.values()) watch.release()
  }
}
