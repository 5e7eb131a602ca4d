import type { SeededRandom } from '../../support/seeded-random'

export const chance = (random: SeededRandom, probability: number): boolean => random.uniform() < probability

export const pick = <T>(random: SeededRandom, list: readonly [T, ...T[]]): T =>
  list[random.below(list.length)] ?? list[0]

export const logNormal = (random: SeededRandom, median: number, deviation: number): number =>
  median * Math.exp(random.normal(0, deviation))

/** Fisher-Yates. */
export function shuffled<T>(random: SeededRandom, list: readonly T[]): readonly T[] {
  const left = [...list]
  return list.flatMap(() => left.splice(random.below(left.length), 1))
}
