/**
 * Shares from scores (natural-log units): softmax. `softness` above 1 flattens them, for where the over-confidence of
 * overlapping observations would mislead. They sum to 1.
 */
export function sharesOf(scores: readonly number[], softness = 1): readonly number[] {
  const highest = Math.max(...scores)
  const powers = scores.map((score) => Math.exp((score - highest) / softness))
  const sum = powers.reduce((total, power) => total + power, 0)
  return powers.map((power) => power / sum)
}
