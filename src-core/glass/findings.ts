import type { CauseId } from './causes'
import { factOf, type EvidenceId } from './evidence'
import { groupOf } from './groups'

export type Answer = 'yes' | 'no' | 'unknown'

/** One observation and where it comes from: asked now, or known from an earlier visit. */
export interface Finding {
  readonly evidence: EvidenceId
  readonly answer: Answer
  readonly from: 'operator' | 'record'
}

/** What is known besides tests: causes confirmed at this site before, and cures tried without success. */
export interface SiteHistory {
  readonly confirmed: readonly CauseId[]
  readonly triedInVain: readonly CauseId[]
}

export const NO_HISTORY: SiteHistory = { confirmed: [], triedInVain: [] }

/**
 * Findings without contradiction or repetition: one answer per item, one "yes" per fact and per group. What the
 * operator sees now goes before what a record says, a "yes" before a "no", a later answer before an earlier one.
 * "Unknown" is left out, because it says nothing.
 */
export function settle(findings: readonly Finding[]): readonly Finding[] {
  const best = new Map<EvidenceId, Finding>()
  for (const finding of findings) {
    if (finding.answer === 'unknown') continue
    const before = best.get(finding.evidence)
    if (before === undefined || !(isOperators(before) && !isOperators(finding)))
      best.set(finding.evidence, finding)
  }
  const settled = [...best.values()]
  const seen = settled.filter((finding) => finding.answer === 'yes')
  return settled.filter(
    (finding) =>
      finding.answer !== 'yes' ||
      !seen.some(
        (other) => other !== finding && excludes(other, finding) && outranks(other, finding, settled),
      ),
  )
}

const isOperators = (finding: Finding): boolean => finding.from === 'operator'

/** Whether two things seen cannot both count: the same fact twice, or two outcomes of one test. */
function excludes(one: Finding, other: Finding): boolean {
  if (factOf(one.evidence) === factOf(other.evidence)) return true
  return groupOf(one.evidence).some((row) => row.evidence === other.evidence)
}

function outranks(one: Finding, other: Finding, order: readonly Finding[]): boolean {
  if (isOperators(one) !== isOperators(other)) return isOperators(one)
  return order.indexOf(one) > order.indexOf(other)
}
