/** Median and spread of repeated timings, in milliseconds, after a warm-up. */
export interface Timing {
  readonly median: number
  readonly low: number
  readonly high: number
  readonly times: number
}

/** `prepare` makes the input of one go and is not timed. */
export async function timed<T>(
  work: (input: T) => unknown,
  times: number,
  prepare: () => T,
): Promise<Timing> {
  const taken: number[] = []
  for (let i = 0; i < times + 2; i += 1) {
    const input = prepare()
    const began = performance.now()
    await work(input)
    if (i >= 2) taken.push(performance.now() - began)
  }
  taken.sort((a, b) => a - b)
  const at = (share: number): number =>
    taken[Math.min(taken.length - 1, Math.floor(share * taken.length))] ?? 0
  return { median: at(0.5), low: at(0.1), high: at(0.9), times }
}

export interface Ratio {
  readonly name: string
  readonly ratio: number
  readonly goal: number | null
  readonly ours: Timing
  readonly floor: Timing
}

/** Ours over the floor, by medians, both timed in the same run, one after the other. */
export async function ratio<T>(
  name: string,
  goal: number | null,
  ours: (input: T) => unknown,
  floor: (input: T) => unknown,
  times: number,
  prepare: () => T,
): Promise<Ratio> {
  const floorTime = await timed(floor, times, prepare)
  const ourTime = await timed(ours, times, prepare)
  return { name, goal, ratio: ourTime.median / floorTime.median, ours: ourTime, floor: floorTime }
}
