/**
 * Two clocks, both in milliseconds since 1970. `steady` only ever goes forward at one rate (performance.timeOrigin +
 * performance.now()); it begins anew with each page and may stand still while the computer sleeps. `wall` is the
 * computer's clock, which people and networks set.
 */
export interface Clock {
  readonly steady: () => number
  readonly wall: () => number
}

/** A watch that runs: plain data, so that it can be kept while the page is away. */
export interface Running {
  /** what is timed, for instance a pump's id */
  readonly of: string
  /** steady ms */
  readonly startedAt: number
  /** steady ms of each lap so far */
  readonly lapsAt: readonly number[]
  /** length of a countdown in seconds; null counts up */
  readonly countdown: number | null
  /** wall minus steady at the start: constant while nobody sets the clock and the computer stays awake */
  readonly offset: number
  readonly seen: { readonly steady: number; readonly wall: number }
  /** seconds the page was away, by the wall clock; part of the time shown */
  readonly away: number
}

/** Why a time cannot be vouched for. `steady` and `wall` are the seconds by each clock; the person says which. */
export interface Doubt {
  readonly steady: number
  readonly wall: number
}

/** Clocks that differ by less are in step: far above their jitter, below what matters to a run. */
const IN_STEP = 500
/** Away for longer than this, a watch is forgotten rather than trusted. */
const FORGET = 30 * 60_000

export const begin = (clock: Clock, of: string, countdown: number | null): Running => {
  const steady = clock.steady()
  const wall = clock.wall()
  return {
    of,
    startedAt: steady,
    lapsAt: [],
    countdown,
    offset: wall - steady,
    seen: { steady, wall },
    away: 0,
  }
}

/** Seconds since the start. */
export const elapsed = (running: Running, clock: Clock): number =>
  Math.max(0, (clock.steady() - running.startedAt) / 1000)

/** Seconds since the last lap, or since the start. */
export const sinceLap = (running: Running, clock: Clock): number =>
  Math.max(0, (clock.steady() - (running.lapsAt.at(-1) ?? running.startedAt)) / 1000)

export const withLap = (running: Running, clock: Clock): Running => ({
  ...running,
  lapsAt: [...running.lapsAt, clock.steady()],
})

export const withSeen = (running: Running, clock: Clock): Running => ({
  ...running,
  seen: { steady: clock.steady(), wall: clock.wall() },
})

/**
 * The wall clock ran ahead of the steady one: either it was set forward, or the computer slept and the steady clock
 * stood still. Which of the two cannot be told from inside, so it is asked. A clock set back is no doubt: sleep
 * never does that.
 */
export function doubtOf(running: Running, clock: Clock): Doubt | null {
  const ahead = clock.wall() - clock.steady() - running.offset
  if (ahead <= IN_STEP) return null
  const steady = elapsed(running, clock)
  return { steady, wall: steady + ahead / 1000 }
}

/**
 * Takes up a watch that was running when the page went away: moves its start onto this page's steady clock. The time
 * in between can only come from the wall clock. Null when that time is negative or too long to be believed.
 */
export function takeUp(saved: Running, clock: Clock): Running | null {
  const steady = clock.steady()
  const wall = clock.wall()
  const gap = wall - saved.seen.wall
  if (gap < -IN_STEP || gap > FORGET) return null
  const shift = steady - Math.max(0, gap) - saved.seen.steady
  const ahead = saved.seen.wall - saved.seen.steady - saved.offset
  return {
    ...saved,
    startedAt: saved.startedAt + shift,
    lapsAt: saved.lapsAt.map((at) => at + shift),
    offset: wall - steady - ahead,
    seen: { steady, wall },
    away: saved.away + Math.max(0, gap) / 1000,
  }
}

/** A kept watch read back from text; null when the text is not one. */
export function readRunning(text: string | null): Running | null {
  if (text === null) return null
  try {
    const value = JSON.parse(text) as Partial<Running> | null
    const numbers = [value?.startedAt, value?.offset, value?.away, value?.seen?.steady, value?.seen?.wall]
    const laps = value?.lapsAt
    const sound =
      typeof value?.of === 'string' &&
      numbers.every(Number.isFinite) &&
      Array.isArray(laps) &&
      laps.every(Number.isFinite) &&
      (value.countdown === null || Number.isFinite(value.countdown))
    return sound ? (value as Running) : null
  } catch {
    return null
  }
}
