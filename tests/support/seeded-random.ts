/** Numbers that look random and are the same on every run and machine. */
export interface SeededRandom {
  /** 0 <= u < 1, 53 bits */
  uniform(): number
  between(low: number, high: number): number
  /** whole number 0 .. n - 1 */
  below(n: number): number
  normal(mean?: number, deviation?: number): number
}

/**
 * Small fast counting generator (sfc32, C. Doty-Humphrey, PractRand) seeded through splitmix32; normal draws by the
 * polar method of Marsaglia.
 */
export function seededRandom(seed: number): SeededRandom {
  let spread = seed >>> 0
  const next = (): number => {
    spread = (spread + 0x9e3779b9) >>> 0
    let z = spread ^ (spread >>> 16)
    z = Math.imul(z, 0x21f0aaad)
    z ^= z >>> 15
    z = Math.imul(z, 0x735a2d97)
    return (z ^ (z >>> 15)) >>> 0
  }
  let a = next()
  let b = next()
  let c = next()
  let counter = 1
  const word = (): number => {
    const t = (((a + b) | 0) + counter) | 0
    counter = (counter + 1) | 0
    a = b ^ (b >>> 9)
    b = (c + (c << 3)) | 0
    c = (c << 21) | (c >>> 11)
    c = (c + t) | 0
    return t >>> 0
  }
  for (let i = 0; i < 12; i += 1) word()
  const uniform = (): number => ((word() >>> 5) * 67_108_864 + (word() >>> 6)) / 9_007_199_254_740_992
  let spare: number | null = null
  const standard = (): number => {
    if (spare !== null) {
      const kept = spare
      spare = null
      return kept
    }
    for (;;) {
      const x = 2 * uniform() - 1
      const y = 2 * uniform() - 1
      const s = x * x + y * y
      if (s >= 1 || s === 0) continue
      const factor = Math.sqrt((-2 * Math.log(s)) / s)
      spare = y * factor
      return x * factor
    }
  }
  return {
    uniform,
    between: (low, high) => low + (high - low) * uniform(),
    below: (n) => Math.floor(uniform() * n),
    normal: (mean = 0, deviation = 1) => mean + deviation * standard(),
  }
}
