import type { EvidenceId } from './evidence'

/** What staff notice without a test, asked on one page before the tests. From the trade's cause table ("looks like"). */
export const NOTICED = [
  'dries-slowly',
  'feels-slippery',
  'feels-greasy',
  'head-collapses',
  'worse-late',
  'chalk-crust',
  'towelled',
] as const satisfies readonly EvidenceId[]

export type NoticedId = (typeof NOTICED)[number]

export const isNoticed = (evidence: EvidenceId): boolean => NOTICED.some((id) => id === evidence)
