import type { CauseId } from './causes'
import { settle, type Finding } from './findings'
import type { GlassModel } from './model'
import type { Ranking, Reason } from './rank'

/** JUDGEMENT: points of its own that a second cause needs before it is named beside the first. */
export const SECOND_CAUSE_POINTS = 2

/**
 * Causes that may be at work beside the likeliest one, the strongest first: what was seen speaks for them by more than
 * the first cause explains. Points are natural-log units, summed over what was seen: the part of a weight above the
 * first cause's own, less what speaks against it, seen or looked for in vain. Nothing is named beside a first cause for which nothing was seen.
 * Mending one and looking again settles it.
 */
export function causesTogether(
  ranking: Ranking,
  findings: readonly Finding[],
  model: GlassModel,
): readonly CauseId[] {
  const first = ranking.causes[0]?.cause
  if (first === undefined) return []
  const seen = settle(findings).filter((finding) => finding.answer === 'yes')
  if (!seen.some(({ evidence }) => model.weight(evidence, first) > 0)) return []
  return ranking.causes
    .slice(1)
    .map(({ cause, reasons }) => ({
      cause,
      points: seen.reduce((sum, { evidence }) => {
        const weight = model.weight(evidence, cause)
        return sum + (weight < 0 ? weight : Math.max(0, weight - Math.max(0, model.weight(evidence, first))))
      }, inVain(reasons)),
    }))
    .filter((row) => row.points >= SECOND_CAUSE_POINTS)
    .sort((a, b) => b.points - a.points)
    .map((row) => row.cause)
}

/** Points of what was looked for and not seen. */
const inVain = (reasons: readonly Reason[]): number =>
  reasons.reduce((sum, reason) => (reason.kind === 'not-seen' ? sum + reason.points : sum), 0)
