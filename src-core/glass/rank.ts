import { CAUSE_IDS, type CauseId } from './causes'
import type { EvidenceId } from './evidence'
import { NO_HISTORY, settle, type Finding, type SiteHistory } from './findings'
import { GROUPS, type Group } from './groups'
import { pointsOfNo } from './likelihood'
import type { GlassModel } from './model'
import { sharesOf } from './shares'

/** One line of the account for or against a cause. Points are natural-log units; positive speaks for it. */
export type Reason =
  | {
      readonly kind: 'seen'
      readonly evidence: EvidenceId
      readonly from: Finding['from']
      readonly points: number
    }
  | {
      readonly kind: 'not-seen'
      readonly evidence: readonly EvidenceId[]
      readonly from: Finding['from']
      readonly points: number
    }
  | { readonly kind: 'had-before'; readonly times: number; readonly points: number }
  | { readonly kind: 'tried-in-vain'; readonly points: number }

export interface RankedCause {
  readonly cause: CauseId
  /** ln(prior) + points of all reasons */
  readonly score: number
  /** softmax of the scores: a ranking aid, over-confident because observations overlap; never shown as a percentage */
  readonly share: number
  /** ln(prior), the prior scaled so that all sum to 1 */
  readonly start: number
  readonly reasons: readonly Reason[]
}

export interface Ranking {
  /** all causes, the likeliest first */
  readonly causes: readonly RankedCause[]
  /** score of the first minus score of the second */
  readonly gap: number
  /** false: the first two differ by less than 1.0, so say "cannot separate yet" */
  readonly separated: boolean
  /** the causes that cannot be told from the first, the first included */
  readonly open: readonly CauseId[]
}

/** JUDGEMENT: the score difference below which two causes are not told apart. */
export const SEPARATION = 1.0
/** JUDGEMENT: what one confirmed earlier case at the site adds, for at most two cases. */
export const POINTS_HAD_BEFORE = 0.5
/** JUDGEMENT: what a cure that did not help takes away: it all but rules its cause out, whatever was seen. */
export const POINTS_TRIED = -5

/**
 * Ranks the causes: score = ln(prior) + the weights of what was seen. "Unknown" and what was never asked add nothing;
 * a plain "no" adds what `pointsOfNo` derives. Scores and points in natural-log units.
 * No problems: every input gives a ranking. Source of the form: naive Bayes with additive log weights; the numbers
 * are judgement (see `weights.ts`).
 */
export function rankCauses(
  findings: readonly Finding[],
  model: GlassModel,
  history: SiteHistory = NO_HISTORY,
): Ranking {
  const settled = settle(findings)
  const byEvidence = new Map(settled.map((finding) => [finding.evidence, finding]))
  const total = CAUSE_IDS.reduce((sum, id) => sum + model.prior[id], 0)
  const scored = CAUSE_IDS.map((cause) => {
    const reasons = [
      ...reasonsSeen(settled, cause, model),
      ...reasonsNotSeen(byEvidence, cause, model),
      ...reasonsFromHistory(history, cause),
    ]
    const start = Math.log(model.prior[cause] / total)
    return { cause, start, reasons, score: reasons.reduce((sum, reason) => sum + reason.points, start) }
  })
  const ordered = scored.sort((a, b) => b.score - a.score)
  const shares = sharesOf(ordered.map((row) => row.score))
  const causes = ordered.map((row, index) => ({ ...row, share: shares[index] ?? 0 }))
  const top = causes[0]?.score ?? 0
  const gap = top - (causes[1]?.score ?? top)
  const open = causes.filter((row) => top - row.score < SEPARATION).map((row) => row.cause)
  return { causes, gap, separated: gap >= SEPARATION, open }
}

function reasonsSeen(settled: readonly Finding[], cause: CauseId, model: GlassModel): readonly Reason[] {
  return settled
    .filter((finding) => finding.answer === 'yes')
    .map(({ evidence, from }) => ({
      kind: 'seen' as const,
      evidence,
      from,
      points: model.weight(evidence, cause),
    }))
    .filter((reason) => reason.points !== 0)
}

function reasonsNotSeen(
  settled: ReadonlyMap<EvidenceId, Finding>,
  cause: CauseId,
  model: GlassModel,
): readonly Reason[] {
  return (GROUPS as readonly Group[]).flatMap((group) => {
    const answers = group.map((row) => settled.get(row.evidence))
    // One outcome seen already says that the others were not.
    if (answers.some((finding) => finding?.answer === 'yes')) return []
    const denied = answers.filter((finding) => finding !== undefined)
    const first = denied[0]
    if (first === undefined) return []
    const evidence = denied.map((finding) => finding.evidence)
    const points = pointsOfNo(group, evidence, cause, model)
    return points === 0 ? [] : [{ kind: 'not-seen' as const, evidence, from: first.from, points }]
  })
}

function reasonsFromHistory(history: SiteHistory, cause: CauseId): readonly Reason[] {
  const times = history.confirmed.filter((id) => id === cause).length
  const before: readonly Reason[] =
    times > 0 ? [{ kind: 'had-before', times, points: POINTS_HAD_BEFORE * Math.min(times, 2) }] : []
  return history.triedInVain.includes(cause)
    ? [...before, { kind: 'tried-in-vain', points: POINTS_TRIED }]
    : before
}
