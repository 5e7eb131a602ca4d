import { PLAIN_DECIMAL } from '../units/read'
import { CAUSES, type CauseId } from './causes'
import { EVIDENCE_IDS, type EvidenceId } from './evidence'
import { WEIGHTS } from './weights'

/** The numbers a ranking uses: shipped, or edited by the site owner. */
export interface GlassModel {
  /** positive; scaled to sum 1 when used */
  readonly prior: Readonly<Record<CauseId, number>>
  readonly weight: (evidence: EvidenceId, cause: CauseId) => number
  /** keys of edits that were left out: unknown, unreadable or out of range */
  readonly ignored: readonly string[]
}

export const priorKey = (cause: CauseId): string => `prior:${cause}`
export const weightKey = (evidence: EvidenceId, cause: CauseId): string => `weight:${evidence}:${cause}`

/** What an edit may be: a prior above 0 up to 1, a weight from -3 to 3. */
export const PRIOR_RANGE = { above: 0, high: 1 } as const
export const WEIGHT_RANGE = { low: -3, high: 3 } as const

/** The shipped value behind a key; null when no such prior or weight exists. */
export const shippedValue = (key: string): number | null => shipped.get(key) ?? null

/**
 * The shipped priors and weights with the owner's edits put over them (`Settings.glassWeights`). An edit that cannot
 * be used is left out and listed; the shipped value stays. Never fails.
 */
export function glassModel(edits: readonly { readonly key: string; readonly value: string }[]): GlassModel {
  const edited = new Map<string, number>()
  const ignored: string[] = []
  for (const { key, value } of edits) {
    if (isUsable(key, value)) edited.set(key, Number(value))
    else ignored.push(key)
  }
  const at = (key: string): number => edited.get(key) ?? shipped.get(key) ?? 0
  const prior = Object.fromEntries(CAUSES.map(({ id }) => [id, at(priorKey(id))])) as Record<CauseId, number>
  return { prior, weight: (evidence, cause) => at(weightKey(evidence, cause)), ignored }
}

/** Whether an edit names a known prior or weight and its value may be used. */
export function isUsable(key: string, value: string): boolean {
  if (!shipped.has(key) || !PLAIN_DECIMAL.test(value)) return false
  const number = Number(value)
  return key.startsWith('prior:')
    ? number > PRIOR_RANGE.above && number <= PRIOR_RANGE.high
    : number >= WEIGHT_RANGE.low && number <= WEIGHT_RANGE.high
}

const shipped: ReadonlyMap<string, number> = new Map([
  ...CAUSES.map(({ id, prior }) => [priorKey(id), prior] as const),
  ...EVIDENCE_IDS.flatMap((evidence) =>
    CAUSES.map(({ id }) => [weightKey(evidence, id), WEIGHTS[evidence][id] ?? 0] as const),
  ),
])
