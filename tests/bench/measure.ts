/** Median and spread of repeated timings, in milliseconds, after a warm-up. */
export interface Timing {
  readonly median: number
  readonly low: number
  readonly high: number
  readonly times: number
}

/** `prepare` makes the input of one go and is not timed. */
export interface Job<T> {
  readonly work: (input: T) => unknown
  readonly prepare: () => T
}

const WARM_UP = 5

/**
 * Time of the processor this program used, all its threads, ms. Unlike the time on the wall it does not grow when
 * others use the machine.
 */
const processorTime = (): number => {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}

/** By the processor for work that computes, by the wall for work that waits for a disk. */
export type Clock = 'processor' | 'wall'
const CLOCKS: Readonly<Record<Clock, () => number>> = {
  processor: processorTime,
  wall: () => performance.now(),
}

/** Times jobs one after another within each round, so that whatever disturbs one round disturbs all of them. */
export async function timedTogether<T>(
  jobs: readonly Job<T>[],
  rounds: number,
  clock: Clock = 'processor',
): Promise<readonly Timing[]> {
  const taken = jobs.map((): number[] => [])
  for (let round = -WARM_UP; round < rounds; round += 1)
    for (const [at, { work, prepare }] of jobs.entries()) {
      const input = prepare()
      const began = CLOCKS[clock]()
      await work(input)
      if (round >= 0) taken[at]?.push(CLOCKS[clock]() - began)
    }
  return taken.map(summary)
}

export function summary(taken: readonly number[]): Timing {
  const sorted = taken.toSorted((a, b) => a - b)
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0
  return { median: at(0.5), low: at(0.1), high: at(0.9), times: sorted.length }
}

export const quantile = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(share * values.length))] ??
  Number.NaN

export interface Ratio {
  readonly name: string
  readonly ratio: number
  /** null: told for what it is, no goal was set */
  readonly goal: number | null
  readonly ours: Timing
  readonly floor: Timing
}

export const ratioOf = (name: string, goal: number | null, ours: Timing, floor: Timing): Ratio => ({
  name,
  goal,
  ratio: ours.median / floor.median,
  ours,
  floor,
})

const ms = (timing: Timing): string =>
  `${timing.median.toPrecision(3)} ms [${timing.low.toPrecision(3)}, ${timing.high.toPrecision(3)}]`

export const told = ({ name, ratio, goal, ours, floor }: Ratio): string =>
  `${name}: ${ratio.toFixed(2)} x the floor${goal === null ? '' : ` (goal ${goal})`}; ` +
  `ours ${ms(ours)}, floor ${ms(floor)}`
