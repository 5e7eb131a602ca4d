import type { CauseId } from './causes'
import type { Group } from './groups'
import { outcomeShares } from './likelihood'
import type { GlassModel } from './model'

export interface Suspicion {
  readonly cause: CauseId
  /** how likely it is taken to be; the shares of all suspicions sum to 1 */
  readonly share: number
}

/**
 * What a test is expected to tell about the cause, bits: the mutual information of cause and outcome, all parts of the
 * test seen together and taken as independent for a given cause. 0 or more; never above log2 of the number of causes.
 * Source of the measure: D. V. Lindley, "On a measure of the information provided by an experiment", Ann. Math. Stat.
 * 27 (1956), from memory.
 */
export function expectedGain(
  parts: readonly Group[],
  suspicions: readonly Suspicion[],
  model: GlassModel,
): number {
  if (parts.length === 0) return 0
  const rows = suspicions.map(({ cause, share }) => ({ share, told: jointShares(parts, cause, model) }))
  const outcomes = rows[0]?.told.length ?? 0
  let gain = 0
  for (let outcome = 0; outcome < outcomes; outcome += 1) {
    const overall = rows.reduce((sum, row) => sum + row.share * (row.told[outcome] ?? 0), 0)
    for (const { share, told } of rows) {
      const given = told[outcome] ?? 0
      if (given > 0 && overall > 0) gain += share * given * Math.log2(given / overall)
    }
  }
  return Math.max(0, gain)
}

/** The two suspicions a test tells apart best, the likelier first; null when it tells none apart. */
export function bestTold(
  parts: readonly Group[],
  suspicions: readonly Suspicion[],
  model: GlassModel,
): readonly [CauseId, CauseId] | null {
  let best: readonly [CauseId, CauseId] | null = null
  let most = 1e-9
  suspicions.forEach((one, index) => {
    for (const other of suspicions.slice(index + 1)) {
      const a = jointShares(parts, one.cause, model)
      const b = jointShares(parts, other.cause, model)
      const apart = a.reduce((sum, share, k) => sum + Math.abs(share - (b[k] ?? 0)), 0)
      const worth = apart * Math.min(one.share, other.share)
      if (worth > most) {
        most = worth
        best = [one.cause, other.cause]
      }
    }
  })
  return best
}

function jointShares(parts: readonly Group[], cause: CauseId, model: GlassModel): readonly number[] {
  return parts.reduce<readonly number[]>(
    (joint, group) => {
      const shares = outcomeShares(group, cause, model)
      return joint.flatMap((before) => shares.map((share) => before * share))
    },
    [1],
  )
}
