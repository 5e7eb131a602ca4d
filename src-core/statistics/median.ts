/** Middle value; of an even number the mean of the two middle ones; null for an empty list. */
export function median(values: readonly number[]): number | null {
  const sorted = values.toSorted((a, b) => a - b)
  const upper = sorted[Math.floor(sorted.length / 2)]
  if (upper === undefined) return null
  const lower = sorted[Math.ceil(sorted.length / 2) - 1] ?? upper
  const total = lower + upper
  return Number.isFinite(total) ? total / 2 : lower / 2 + upper / 2
}
