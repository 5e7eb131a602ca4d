/**
 * Why glasses come out marked. JUDGEMENT, no source: how often each cause is behind marked glasses before anything is
 * known about the kitchen. The numbers sum to 1 and can be edited (see `model.ts`). Order is by trade habit, not by rank.
 */
export const CAUSES = [
  { id: 'rinse-aid-low', name: 'Rinse aid missing or under-dosed', prior: 0.18 },
  { id: 'rinse-aid-high', name: 'Rinse aid over-dosed', prior: 0.05 },
  {
    id: 'hard-rinse',
    name: 'Hard final-rinse water (softener exhausted, bypassed or absent)',
    prior: 0.14,
  },
  {
    id: 'high-tds',
    name: 'High dissolved solids, not hardness (softened but salty, or high-TDS supply)',
    prior: 0.08,
  },
  { id: 'detergent-low', name: 'Detergent under-dosed in the wash tank', prior: 0.08 },
  { id: 'carryover', name: 'Alkaline carry-over: detergent too strong or rinse too weak', prior: 0.09 },
  {
    id: 'rinse-temp-low',
    name: 'Final rinse too cool, or too short a drying time from it',
    prior: 0.07,
  },
  {
    id: 'rinse-flow-poor',
    name: 'Final rinse pressure or volume wrong, or jets limed or blocked',
    prior: 0.08,
  },
  { id: 'tank-dirty', name: 'Wash tank too old or filters fouled', prior: 0.06 },
  { id: 'handling', name: 'Towelling, nesting, flat racks, no drying time', prior: 0.06 },
  { id: 'grease', name: 'Grease, lipstick or wax film', prior: 0.05 },
  { id: 'etched', name: 'Etched (corroded) glass', prior: 0.04 },
  { id: 'silica', name: 'Silica deposit', prior: 0.02 },
] as const

export type CauseId = (typeof CAUSES)[number]['id']

export const CAUSE_IDS: readonly CauseId[] = CAUSES.map((cause) => cause.id)

export const isCause = (text: string): text is CauseId => CAUSE_IDS.some((id) => id === text)
