import type { CauseId } from './causes'
import type { Group } from './groups'
import { outcomeShares, sharesAfterGlance } from './likelihood'
import type { GlassModel } from './model'

export interface Suspicion {
  readonly cause: CauseId
  /** how likely it is taken to be; the shares of all suspicions sum to 1 */
  readonly share: number
}

/** One part of a test as it would be seen now: its outcomes, and whether a glance has missed them already. */
export interface OpenPart {
  readonly group: Group
  readonly glanced: boolean
}

/** The chances of every answer to a test, all parts seen together, cause by cause. */
interface Told {
  readonly share: number
  readonly told: readonly number[]
}

/**
 * What a test is expected to tell about the cause, bits: the mutual information of cause and outcome, all parts of the
 * test seen together and taken as independent for a given cause. 0 or more; never above log2 of the number of causes.
 * Source of the measure: D. V. Lindley, "On a measure of the information provided by an experiment", Ann. Math. Stat.
 * 27 (1956), from memory.
 */
export function expectedGain(
  parts: readonly OpenPart[],
  suspicions: readonly Suspicion[],
  model: GlassModel,
): number {
  const rows = toldRows(parts, suspicions, model)
  let gain = 0
  forEachOutcome(rows, (joint) => {
    const overall = joint.reduce((sum, share) => sum + share, 0)
    joint.forEach((share, index) => {
      const before = rows[index]?.share ?? 0
      if (share > 0 && overall > 0) gain += share * Math.log2(share / before / overall)
    })
  })
  return Math.max(0, gain)
}

/**
 * How likely the true cause is expected to stand among the first two after the test, 0 to 1: the two likeliest causes
 * of every answer, summed over the answers. Never less than the first two hold now.
 */
export function expectedFirstTwo(
  parts: readonly OpenPart[],
  suspicions: readonly Suspicion[],
  model: GlassModel,
): number {
  let sum = 0
  forEachOutcome(toldRows(parts, suspicions, model), (joint) => {
    sum += firstTwo(joint)
  })
  return sum
}

/** The two largest of some shares, together. */
export function firstTwo(shares: readonly number[]): number {
  let first = 0
  let second = 0
  for (const share of shares) {
    if (share > first) {
      second = first
      first = share
    } else if (share > second) second = share
  }
  return first + second
}

/** The two suspicions a test tells apart best, the likelier first; null when it tells none apart. */
export function bestTold(
  parts: readonly OpenPart[],
  suspicions: readonly Suspicion[],
  model: GlassModel,
): readonly [CauseId, CauseId] | null {
  const rows = toldRows(parts, suspicions, model)
  let best: readonly [CauseId, CauseId] | null = null
  let most = 1e-9
  suspicions.forEach((one, index) => {
    suspicions.slice(index + 1).forEach((other, later) => {
      const a = rows[index]?.told ?? []
      const b = rows[index + 1 + later]?.told ?? []
      const apart = a.reduce((sum, share, k) => sum + Math.abs(share - (b[k] ?? 0)), 0)
      const worth = apart * Math.min(one.share, other.share)
      if (worth > most) {
        most = worth
        best = [one.cause, other.cause]
      }
    })
  })
  return best
}

const toldRows = (
  parts: readonly OpenPart[],
  suspicions: readonly Suspicion[],
  model: GlassModel,
): readonly Told[] =>
  suspicions.map(({ cause, share }) => ({ share, told: jointShares(parts, cause, model) }))

/** Calls `use` with the shares of cause and outcome together, outcome by outcome. */
function forEachOutcome(rows: readonly Told[], use: (joint: readonly number[]) => void): void {
  const outcomes = rows[0]?.told.length ?? 0
  for (let outcome = 0; outcome < outcomes; outcome += 1)
    use(rows.map(({ share, told }) => share * (told[outcome] ?? 0)))
}

function jointShares(parts: readonly OpenPart[], cause: CauseId, model: GlassModel): readonly number[] {
  return parts.reduce<readonly number[]>(
    (joint, { group, glanced }) => {
      const shares = glanced ? sharesAfterGlance(group, cause, model) : outcomeShares(group, cause, model)
      return joint.flatMap((before) => shares.map((share) => before * share))
    },
    [1],
  )
}
