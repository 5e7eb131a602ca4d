/** A seeded source of chance, so that the demo sites come out the same every time they are made. */
export interface Chance {
  readonly uniform: () => number
  readonly normal: () => number
  readonly uuid: () => string
}

/** mulberry32: a 32-bit generator in the public domain; plenty for made-up readings, nothing for secrets. */
export function chance(seed: number): Chance {
  let state = seed >>> 0
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296
  }
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform())
  const hex = (digits: number): string =>
    Array.from({ length: digits }, () => Math.floor(uniform() * 16).toString(16)).join('')
  const uuid = (): string => `${hex(8)}-${hex(4)}-4${hex(3)}-a${hex(3)}-${hex(12)}`
  return { uniform, normal, uuid }
}
