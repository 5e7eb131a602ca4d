import {
  begin,
  doubtOf,
  elapsed,
  readRunning,
  sinceLap,
  takeUp,
  withLap,
  withSeen,
  type Clock,
  type Doubt,
  type Running,
} from './running'
import { silent, type Signals } from './signals'

/** What a watch keeps while the page is away; a browser's localStorage fits. */
export type Keep = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>

export interface Timed {
  readonly of: string
  readonly seconds: number
  readonly doubt: Doubt | null
  /** seconds of it the page was away */
  readonly away: number
}

export interface StopwatchOptions {
  readonly key: string
  readonly keep: Keep
  readonly clock?: Clock
  readonly signals?: Signals
  /** a countdown came to its end in time, with the tone given: the run is exactly as long as asked */
  readonly onZero?: (timed: Timed) => void
  /** for a countdown that is a least time, not a measurement: zero counts however late it is noticed */
  readonly patient?: boolean
}

export const pageClock: Clock = {
  steady: () => performance.timeOrigin + performance.now(),
  wall: () => Date.now(),
}

/** A tone later than this after zero helps nobody: the watch goes on and says so. Idle tabs wake once a second. */
const LATE = 1.5
const TICK = 50

/**
 * A stopwatch that goes on whatever happens to the page: measured from a steady clock, kept across a reload, and
 * checked against the computer's clock, so that a time it cannot vouch for is asked about and never guessed.
 */
export class Stopwatch {
  #running: Running | null = $state.raw(null)
  /** moves with each tick, so that what is shown follows */
  #tick = $state(0)
  #timer: ReturnType<typeof setInterval> | null = null
  #lastKept = 0
  #silence = (): void => undefined
  readonly #clock: Clock
  readonly #signals: Signals
  readonly #options: StopwatchOptions
  /** the tone could not be given on time; the watch runs on as an ordinary one */
  missedZero = $state(false)
  /** true for a moment after zero, for the eye */
  flashing = $state(false)

  constructor(options: StopwatchOptions) {
    this.#options = options
    this.#clock = options.clock ?? pageClock
    this.#signals = options.signals ?? silent
    const saved = readRunning(options.keep.getItem(options.key))
    const running = saved === null ? null : takeUp(saved, this.#clock)
    if (running === null) options.keep.removeItem(options.key)
    else this.#run(running)
  }

  get running(): boolean {
    return this.#running !== null
  }
  get of(): string | null {
    return this.#running?.of ?? null
  }
  get countdown(): number | null {
    return this.#running?.countdown ?? null
  }
  /** s since the start */
  get seconds(): number {
    return this.#tick >= 0 && this.#running !== null ? elapsed(this.#running, this.#clock) : 0
  }
  /** s since the last lap */
  get lapSeconds(): number {
    return this.#tick >= 0 && this.#running !== null ? sinceLap(this.#running, this.#clock) : 0
  }
  get laps(): number {
    return this.#running?.lapsAt.length ?? 0
  }
  /** s still to go; null when counting up, or when zero was missed */
  get remaining(): number | null {
    const length = this.countdown
    return length === null || this.missedZero ? null : Math.max(0, length - this.seconds)
  }

  /** Starts, unless it runs already. */
  start(of: string, countdown: number | null = null): void {
    if (this.#running !== null) return
    this.#signals.ready()
    this.#run(begin(this.#clock, of, countdown))
  }

  /** Ends a lap and goes on: the time since the last one. */
  lap(): Timed | null {
    const running = this.#running
    if (running === null) return null
    const timed = this.#timed(running, sinceLap(running, this.#clock))
    this.#running = withLap(running, this.#clock)
    this.#save()
    this.#signals.tap()
    return timed
  }

  /** Stops: the time since the last lap, or since the start. */
  stop(): Timed | null {
    const running = this.#running
    if (running === null) return null
    const timed = this.#timed(running, sinceLap(running, this.#clock))
    this.#end()
    return timed
  }

  /** Stops and forgets. */
  cancel(): void {
    this.#end()
  }

  /** Lets go of the page's timer; the kept watch stays and is taken up by the next one with this key. */
  release(): void {
    this.#save()
    this.#silence()
    if (this.#timer !== null) clearInterval(this.#timer)
    this.#timer = null
  }

  #timed = (running: Running, seconds: number): Timed => {
    const doubt = doubtOf(running, this.#clock)
    const lapsBefore = elapsed(running, this.#clock) - sinceLap(running, this.#clock)
    return {
      of: running.of,
      seconds,
      doubt: doubt === null ? null : { steady: seconds, wall: doubt.wall - lapsBefore },
      away: running.away,
    }
  }

  #run(running: Running): void {
    this.#running = running
    this.missedZero = false
    const left = running.countdown === null ? null : running.countdown - elapsed(running, this.#clock)
    if (left !== null && left > 0) this.#silence = this.#signals.countTo(left)
    this.#save()
    this.#timer = setInterval(() => this.#onTick(), TICK)
  }

  #onTick(): void {
    const running = this.#running
    if (running === null) return
    this.#tick += 1
    if (this.#clock.wall() - this.#lastKept >= 1000 || this.#clock.wall() < this.#lastKept) this.#save()
    const over = running.countdown === null ? -1 : elapsed(running, this.#clock) - running.countdown
    if (over < 0 || this.missedZero) return
    const inTime = over <= LATE && doubtOf(running, this.#clock) === null && running.lapsAt.length === 0
    if (!inTime && this.#options.patient !== true) {
      this.missedZero = true
      return
    }
    const timed: Timed = { of: running.of, seconds: running.countdown ?? 0, doubt: null, away: running.away }
    this.#silence = () => undefined
    this.#end()
    this.#flash()
    this.#options.onZero?.(timed)
  }

  #flash(): void {
    this.flashing = true
    setTimeout(() => (this.flashing = false), 1500)
  }

  #save(): void {
    if (this.#running === null) return
    this.#lastKept = this.#clock.wall()
    const kept = withSeen(this.#running, this.#clock)
    this.#options.keep.setItem(this.#options.key, JSON.stringify(kept))
  }

  #end(): void {
    this.#silence()
    this.#silence = () => undefined
    if (this.#timer !== null) clearInterval(this.#timer)
    this.#timer = null
    this.#running = null
    this.missedZero = false
    this.#options.keep.removeItem(this.#options.key)
  }
}
