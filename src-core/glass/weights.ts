import type { CauseId } from './causes'
import type { EvidenceId } from './evidence'

export type Weights = Readonly<Record<EvidenceId, Readonly<Partial<Record<CauseId, number>>>>>

/**
 * JUDGEMENT, no source: what each observation says about each cause, as about the natural logarithm of how much
 * oftener it is seen with the cause than without, from -3 to +3; a cause not named gets 0. Editable (see `model.ts`).
 *
 * The rows after `softener-empty` weigh the pictures the operator starts from. They follow one rule: a cause that the
 * trade's symptom list names for the picture gets 1; what a picture speaks against gets -1.
 */
export const WEIGHTS: Weights = {
  'acid-clears': {
    'hard-rinse': 2,
    'rinse-aid-low': 0.6,
    carryover: 0.6,
    'high-tds': 0.2,
    'rinse-flow-poor': 0.5,
    'detergent-low': 0.2,
    etched: -3,
    silica: -2.5,
    grease: -1.5,
    'rinse-aid-high': -0.5,
  },
  'acid-no-change': {
    etched: 2,
    silica: 1.8,
    grease: 1,
    'detergent-low': 0.4,
    'hard-rinse': -2.5,
    'high-tds': -2,
    carryover: -1.5,
    'rinse-aid-low': -1.2,
  },
  'water-clears': {
    'high-tds': 2,
    carryover: 1,
    'rinse-aid-high': 0.8,
    'rinse-aid-low': 0.5,
    'hard-rinse': -1.5,
    silica: -2.5,
    etched: -3,
    grease: -1.5,
  },
  'scratch-removes': { silica: 1, 'hard-rinse': 0.8, 'detergent-low': 0.4, etched: -2.5 },
  beads: {
    'rinse-aid-low': 1.8,
    grease: 1.2,
    'detergent-low': 0.6,
    'rinse-flow-poor': 0.3,
    'rinse-aid-high': -1.5,
  },
  sheets: {
    'rinse-aid-low': -1.8,
    grease: -1.8,
    'rinse-aid-high': 0.6,
    'high-tds': 0.4,
    'hard-rinse': 0.3,
    handling: 0.5,
  },
  'ph-high-on-glass': { carryover: 2.5, 'rinse-flow-poor': 1, 'tank-dirty': 0.2 },
  'hardness-high': { 'hard-rinse': 1.8, 'detergent-low': 0.4, 'high-tds': -1, etched: -0.8 },
  'hardness-low-tds-high': { 'high-tds': 2.2, 'hard-rinse': -2.5, etched: 0.3 },
  'hard-and-tds-low': {
    'hard-rinse': -3,
    'high-tds': -3,
    etched: 0.8,
    carryover: 0.5,
    'rinse-aid-high': 0.3,
  },
  'ra-dose-low': { 'rinse-aid-low': 2.5, 'rinse-aid-high': -3 },
  'ra-supply-out': { 'rinse-aid-low': 2.5, 'rinse-aid-high': -3 },
  'ra-dose-high': { 'rinse-aid-high': 2.5, 'rinse-aid-low': -3 },
  'ra-dose-ok': { 'rinse-aid-low': -2, 'rinse-aid-high': -1.5 },
  'det-low': { 'detergent-low': 2.5, grease: 0.8, carryover: -2.5, etched: -0.8 },
  'det-high': { carryover: 1.8, etched: 0.8, 'detergent-low': -3 },
  'rinse-cool': { 'rinse-temp-low': 2.2, 'rinse-aid-low': 0.2 },
  'pressure-bad': { 'rinse-flow-poor': 2, carryover: 0.8 },
  'jets-blocked': { 'rinse-flow-poor': 2.2, 'hard-rinse': 0.8, carryover: 0.6 },
  'racks-many': { 'tank-dirty': 2.2, carryover: 0.3, 'detergent-low': 0.4 },
  towelled: { handling: 2.5 },
  iridescent: { 'rinse-aid-high': 1.2, etched: 1.2, silica: 0.8, 'hard-rinse': -1 },
  'foam-or-streaks': { 'rinse-aid-high': 1.5, carryover: 0.6, 'tank-dirty': 0.6, 'rinse-aid-low': -0.5 },
  'matte-permanent': { etched: 2.5, silica: 1.5, 'high-tds': -2, 'rinse-aid-low': -1.5 },
  'new-glass-ok': {
    etched: 2,
    silica: 1,
    grease: 0.3,
    'high-tds': -2,
    'hard-rinse': -1.2,
    'rinse-aid-low': -1.5,
  },
  'new-glass-bad': { etched: -2.5, 'high-tds': 0.4, 'rinse-aid-low': 0.4, 'hard-rinse': 0.3 },
  'salt-test-fails': { grease: 2, 'rinse-aid-high': 0.5 },
  'rim-marks': { grease: 1.8, handling: 0.8 },
  'softener-empty': { 'hard-rinse': 2.2, 'high-tds': -0.5 },
  'clear-spots': { 'rinse-aid-low': 1, 'high-tds': 1, 'rinse-temp-low': 1 },
  'white-film': { 'hard-rinse': 1, carryover: 1, 'detergent-low': 1 },
  'food-soil': { 'detergent-low': 1, 'tank-dirty': 1 },
  'one-zone': { 'rinse-flow-poor': 1 },
  'other-ware-too': { etched: -1 },
  'began-suddenly': { etched: -1, silica: -1 },
}
