import type { EvidenceId } from './evidence'

/**
 * Observations that shut each other out: one look or one measurement gives one of them, or none.
 * `often`: JUDGEMENT, no source: in what part of kitchens with marked glasses each is seen. These serve to choose the
 * next test and to weigh a plain "no"; the weight of what is seen does not depend on them.
 */
export const GROUPS = [
  [
    { evidence: 'acid-clears', often: 0.45 },
    { evidence: 'acid-no-change', often: 0.3 },
  ],
  [{ evidence: 'water-clears', often: 0.2 }],
  [{ evidence: 'scratch-removes', often: 0.25 }],
  [
    { evidence: 'beads', often: 0.3 },
    { evidence: 'sheets', often: 0.45 },
  ],
  [{ evidence: 'ph-high-on-glass', often: 0.08 }],
  [
    { evidence: 'hardness-high', often: 0.2 },
    { evidence: 'hardness-low-tds-high', often: 0.08 },
    { evidence: 'hard-and-tds-low', often: 0.1 },
  ],
  [
    { evidence: 'ra-dose-low', often: 0.08 },
    { evidence: 'ra-dose-high', often: 0.08 },
    { evidence: 'ra-dose-ok', often: 0.5 },
  ],
  [{ evidence: 'ra-supply-out', often: 0.05 }],
  [
    { evidence: 'det-low', often: 0.08 },
    { evidence: 'det-high', often: 0.12 },
  ],
  [{ evidence: 'rinse-cool', often: 0.1 }],
  [{ evidence: 'pressure-bad', often: 0.1 }],
  [{ evidence: 'jets-blocked', often: 0.1 }],
  [{ evidence: 'racks-many', often: 0.1 }],
  [{ evidence: 'towelled', often: 0.1 }],
  [{ evidence: 'iridescent', often: 0.15 }],
  [{ evidence: 'foam-or-streaks', often: 0.15 }],
  [{ evidence: 'matte-permanent', often: 0.07 }],
  [
    { evidence: 'new-glass-ok', often: 0.15 },
    { evidence: 'new-glass-bad', often: 0.6 },
  ],
  [{ evidence: 'salt-test-fails', often: 0.1 }],
  [{ evidence: 'rim-marks', often: 0.12 }],
  [{ evidence: 'softener-empty', often: 0.1 }],
  [{ evidence: 'clear-spots', often: 0.3 }],
  [{ evidence: 'white-film', often: 0.3 }],
  [{ evidence: 'food-soil', often: 0.12 }],
  [{ evidence: 'one-zone', often: 0.15 }],
  [{ evidence: 'other-ware-too', often: 0.3 }],
  [{ evidence: 'began-suddenly', often: 0.3 }],
  [{ evidence: 'dries-slowly', often: 0.2 }],
  [{ evidence: 'feels-slippery', often: 0.2 }],
  [{ evidence: 'feels-greasy', often: 0.2 }],
  [{ evidence: 'head-collapses', often: 0.2 }],
  [{ evidence: 'worse-late', often: 0.2 }],
  [{ evidence: 'chalk-crust', often: 0.2 }],
] as const satisfies readonly Group[]

export type Group = readonly { readonly evidence: EvidenceId; readonly often: number }[]

const groups = new Map<EvidenceId, Group>(
  (GROUPS as readonly Group[]).flatMap((group) => group.map((row) => [row.evidence, group] as const)),
)

/** The group an observation belongs to. */
export const groupOf = (evidence: EvidenceId): Group => groups.get(evidence) ?? []
