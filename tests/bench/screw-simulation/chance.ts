/** Seeded chance (mulberry32, public domain), so that a run can be repeated exactly. */
export interface Chance {
  readonly uniform: (low: number, high: number) => number
  readonly logUniform: (low: number, high: number) => number
  readonly normal: () => number
}

export function chance(seed: number): Chance {
  let state = seed >>> 0
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296
  }
  const uniform = (low: number, high: number): number => low + (high - low) * next()
  return {
    uniform,
    logUniform: (low, high) => Math.exp(uniform(Math.log(low), Math.log(high))),
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
  }
}
