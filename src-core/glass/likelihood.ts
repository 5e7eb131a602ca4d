import { CAUSE_IDS, type CauseId } from './causes'
import type { EvidenceId } from './evidence'
import type { Group } from './groups'
import type { GlassModel } from './model'

/** JUDGEMENT: no test shows its sign every time; at least this part of the answers is "none of it". */
const NEVER_SURE = 0.05
/** JUDGEMENT: part of the answers taken to be mistaken. */
const MISTAKEN = 0.05

/**
 * How often each outcome of a group is told by people in kitchens with the cause given: its general frequency times e
 * to the weight, held below certainty, some of the answers mistaken. The last number is "none of them". All lie in 0..1
 * and sum to 1.
 */
export function outcomeShares(group: Group, cause: CauseId, model: GlassModel): readonly number[] {
  const known = (memory.get(model) ?? remember(model)).get(cause)
  const before = known?.get(group)
  if (before !== undefined) return before
  const raw = group.map((row) => row.often * Math.exp(model.weight(row.evidence, cause)))
  const sum = raw.reduce((total, value) => total + value, 0)
  const scale = sum > 1 - NEVER_SURE ? (1 - NEVER_SURE) / sum : 1
  const shares = withMistakes([...raw.map((value) => value * scale), 1 - sum * scale])
  known?.set(group, shares)
  return shares
}

/** Shares depend on nothing but the model, the cause and the group, so they are worked out once. */
const memory = new WeakMap<GlassModel, Map<CauseId, WeakMap<Group, readonly number[]>>>()
function remember(model: GlassModel): Map<CauseId, WeakMap<Group, readonly number[]>> {
  const fresh = new Map(CAUSE_IDS.map((cause) => [cause, new WeakMap<Group, readonly number[]>()]))
  memory.set(model, fresh)
  return fresh
}

/** JUDGEMENT: part of the signs that show in good light which a first glance misses. */
const MISSED_AT_A_GLANCE = 1 / 3

/** The shares of a yes-or-no sign on a closer look, given that a glance did not find it. */
export function sharesAfterGlance(group: Group, cause: CauseId, model: GlassModel): readonly number[] {
  const found = outcomeShares(group, cause, model)[0] ?? 0
  const missed = (found * MISSED_AT_A_GLANCE) / (1 - found * (1 - MISSED_AT_A_GLANCE))
  return [missed, 1 - missed]
}

const withMistakes = (shares: readonly number[]): readonly number[] =>
  shares.map((share) => (1 - MISTAKEN) * share + (MISTAKEN * (1 - share)) / (shares.length - 1))

/**
 * What a plain "no" to some outcomes of one group adds to a cause's score: the logarithm of how much oftener a kitchen
 * with this cause would have answered no than a kitchen about which nothing is known.
 */
export function pointsOfNo(
  group: Group,
  denied: readonly EvidenceId[],
  cause: CauseId,
  model: GlassModel,
): number {
  const shares = outcomeShares(group, cause, model)
  const general = withMistakes([
    ...group.map((row) => row.often),
    1 - group.reduce((sum, row) => sum + row.often, 0),
  ])
  let withCause = 1
  let anywhere = 1
  group.forEach((row, index) => {
    if (!denied.includes(row.evidence)) return
    withCause -= shares[index] ?? 0
    anywhere -= general[index] ?? 0
  })
  return Math.log(withCause / anywhere)
}
