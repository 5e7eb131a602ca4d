import { meanAndSpread } from '../statistics/mean-and-spread'
import { AGREEMENT } from './series-limits'

/**
 * Largest two-group t statistic over all splits of a sorted sample that leave two or more on either side, exceeded by
 * 1 % of samples from one normal population, for 4, 5, 6 ... values. From 200 000 seeded samples per size; good to
 * about 1 % of the value. Beyond ten it stays between 8.8 and 9.4.
 */
const CRITICAL = [17.2, 13, 10.9, 9.9, 9.4, 9.1, 8.9]
const CRITICAL_BEYOND = 9

export interface TwoLevels {
  readonly low: number
  readonly high: number
}

/**
 * Whether flows (mL/min) fall into two groups far apart for their own scatter: a roller that does not always press,
 * an intermittent contact, a reading slip. Needs four values; groups closer than 2 % of the mean do not matter.
 */
export function twoLevels(flows: readonly number[]): TwoLevels | null {
  const sorted = flows.toSorted((a, b) => a - b)
  const n = sorted.length
  const critical = CRITICAL[n - 4] ?? CRITICAL_BEYOND
  let found: TwoLevels | null = null
  let strongest = critical
  for (let size = 2; size <= n - 2; size += 1) {
    const lower = meanAndSpread(sorted.slice(0, size))
    const upper = meanAndSpread(sorted.slice(size))
    if (!lower.ok || !upper.ok) return null
    const gap = upper.value.mean - lower.value.mean
    if (!(gap > AGREEMENT * Math.abs(upper.value.mean + lower.value.mean) * 0.5)) continue
    const within = Math.sqrt(
      ((lower.value.standardDeviation ?? 0) ** 2 * (size - 1) +
        (upper.value.standardDeviation ?? 0) ** 2 * (n - size - 1)) /
        (n - 2),
    )
    const t = gap / (within * Math.sqrt(1 / size + 1 / (n - size)))
    if (t > strongest) {
      strongest = t
      found = { low: lower.value.mean, high: upper.value.mean }
    }
  }
  return found
}
