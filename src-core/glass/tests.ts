import type { EvidenceId } from './evidence'

export type Effort = 'look' | 'wipe' | 'strip' | 'meter' | 'call'

/** JUDGEMENT, no source: how hard each kind of test is for kitchen staff; only the ratios count. */
export const EFFORT: Readonly<Record<Effort, number>> = {
  look: 1,
  wipe: 1.5,
  strip: 2,
  meter: 2.5,
  call: 3,
}

/**
 * One thing the operator can do or ask for, and what it can show. Inside a part one outcome or none is found; the
 * parts of one test are seen together, at the same place.
 */
export interface GlassTest {
  readonly id: string
  readonly effort: Effort
  readonly parts: readonly (readonly EvidenceId[])[]
  /** asks more closely what the first pages asked at a glance: a sign not seen there may still be found */
  readonly secondLook?: true
}

export const TESTS = [
  {
    id: 'round',
    effort: 'look',
    parts: [['ra-supply-out'], ['softener-empty'], ['jets-blocked'], ['racks-many'], ['towelled']],
  },
  {
    id: 'close-look',
    effort: 'look',
    secondLook: true,
    parts: [['iridescent'], ['foam-or-streaks'], ['rim-marks'], ['matte-permanent']],
  },
  { id: 'gauges', effort: 'look', parts: [['rinse-cool'], ['pressure-bad']] },
  { id: 'water-wipe', effort: 'wipe', parts: [['water-clears']] },
  { id: 'acid-wipe', effort: 'wipe', parts: [['acid-clears', 'acid-no-change']] },
  { id: 'pin', effort: 'wipe', parts: [['scratch-removes']] },
  { id: 'wet-glass', effort: 'wipe', parts: [['beads', 'sheets'], ['salt-test-fails']] },
  { id: 'strips', effort: 'strip', parts: [['ph-high-on-glass'], ['hardness-high']] },
  {
    id: 'water-meters',
    effort: 'meter',
    parts: [['hardness-high', 'hardness-low-tds-high', 'hard-and-tds-low']],
  },
  { id: 'new-glass', effort: 'meter', parts: [['new-glass-ok', 'new-glass-bad']] },
  {
    id: 'measured',
    effort: 'call',
    parts: [
      ['ra-dose-low', 'ra-dose-high', 'ra-dose-ok'],
      ['det-low', 'det-high'],
    ],
  },
] as const satisfies readonly GlassTest[]

export type TestId = (typeof TESTS)[number]['id']
