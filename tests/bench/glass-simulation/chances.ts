import type { EvidenceId } from '#core/glass/evidence'
import { normalCdf } from '#core/statistics/distributions'
import type { TestId } from '#core/glass/tests'
import type { Deposit, Kitchen } from './kitchen'

/** How often each outcome of one part of a test shows; the shares sum to 1. Null: none of the outcomes. */
export type Chances = readonly { readonly is: EvidenceId | null; readonly share: number }[]

type Odds = Readonly<Record<Deposit, number>>

const WATER_REMOVES: Odds = {
  salts: 0.9,
  alkali: 0.7,
  surfactant: 0.6,
  carbonate: 0.1,
  soil: 0.3,
  fat: 0.1,
  'attacked-glass': 0,
  silica: 0,
}
const ACID_REMOVES: Odds = {
  carbonate: 0.95,
  salts: 0.8,
  alkali: 0.9,
  surfactant: 0.5,
  soil: 0.35,
  fat: 0.1,
  'attacked-glass': 0.02,
  silica: 0.05,
}
/** where acid does not clear it: how often nothing at all changes */
const ACID_LEAVES: Odds = {
  carbonate: 0.2,
  salts: 0.3,
  alkali: 0.3,
  surfactant: 0.4,
  soil: 0.5,
  fat: 0.7,
  'attacked-glass': 0.9,
  silica: 0.9,
}
const PIN_LIFTS: Odds = {
  carbonate: 0.7,
  salts: 0.7,
  alkali: 0.6,
  surfactant: 0.4,
  soil: 0.6,
  fat: 0.6,
  'attacked-glass': 0.05,
  silica: 0.7,
}
const SHEEN: Odds = {
  carbonate: 0.05,
  salts: 0.05,
  alkali: 0.05,
  surfactant: 0.6,
  soil: 0.05,
  fat: 0.1,
  'attacked-glass': 0.35,
  silica: 0.6,
}
const STREAKS: Odds = {
  carbonate: 0.1,
  salts: 0.15,
  alkali: 0.4,
  surfactant: 0.7,
  soil: 0.3,
  fat: 0.15,
  'attacked-glass': 0.05,
  silica: 0.05,
}

const sign = (is: EvidenceId, share: number): Chances => [
  { is, share },
  { is: null, share: 1 - share },
]
const fact = (is: EvidenceId, isSo: boolean): Chances => sign(is, isSo ? 1 : 0)
/** The first shows in `share` of the cases; of the rest, the second in `ofRest`. */
const either = (first: EvidenceId, share: number, second: EvidenceId, ofRest: number): Chances => [
  { is: first, share },
  { is: second, share: (1 - share) * ofRest },
  { is: null, share: (1 - share) * (1 - ofRest) },
]
/** Part of log-normal readings of `value` that lie below a limit. */
const below = (limit: number, value: number, deviation: number): number =>
  normalCdf(Math.log(limit / value) / deviation)

const HARD_STRIP = 0.2
const DOSE_READING = 0.03
const STRENGTH_READING = 0.08

/** What a careful person would see in this kitchen: the chances of every outcome, part by part of the test. */
export function partChances(test: TestId, kitchen: Kitchen): readonly Chances[] {
  const { deposit, cause } = kitchen
  switch (test) {
    case 'close-look':
      return [
        sign('iridescent', SHEEN[deposit]),
        sign('foam-or-streaks', cause === 'tank-dirty' ? 0.5 : STREAKS[deposit]),
        sign('rim-marks', deposit === 'fat' ? 0.6 : cause === 'handling' ? 0.35 : 0.05),
        sign('matte-permanent', MATTE[deposit] ?? 0.04),
      ]
    case 'round':
      return [
        fact('ra-supply-out', kitchen.rinseAidOut),
        fact('softener-empty', kitchen.softenerEmpty),
        fact('jets-blocked', kitchen.jetsBlocked),
        fact('racks-many', kitchen.tankOld),
        fact('towelled', kitchen.towelled),
      ]
    case 'gauges':
      return [fact('rinse-cool', kitchen.rinseMargin < 0), fact('pressure-bad', kitchen.pressureBad)]
    case 'water-wipe':
      return [sign('water-clears', WATER_REMOVES[deposit])]
    case 'acid-wipe':
      return [either('acid-clears', ACID_REMOVES[deposit], 'acid-no-change', ACID_LEAVES[deposit])]
    case 'pin':
      return [sign('scratch-removes', PIN_LIFTS[deposit])]
    case 'wet-glass':
      return [
        either('beads', beading(kitchen), 'sheets', 0.85),
        sign('salt-test-fails', SALT_BARE[deposit] ?? 0.05),
      ]
    case 'strips':
      return [
        sign('ph-high-on-glass', deposit === 'alkali' ? 0.88 : kitchen.detergent > 1.4 ? 0.25 : 0.04),
        sign('hardness-high', 1 - below(60, kitchen.hardness, HARD_STRIP)),
      ]
    case 'water-meters':
      return [water(kitchen)]
    case 'new-glass':
      return [either('new-glass-ok', NEW_CLEAR[deposit] ?? 0.07, 'new-glass-bad', 0.9)]
    case 'measured':
      return [dose(kitchen.rinseAid), strength(kitchen.detergent)]
  }
}

type SomeOdds = Readonly<Partial<Record<Deposit, number>>>
const MATTE: SomeOdds = { 'attacked-glass': 0.9, silica: 0.6, carbonate: 0.12 }
const SALT_BARE: SomeOdds = { fat: 0.8, soil: 0.35, surfactant: 0.2 }
const NEW_CLEAR: SomeOdds = { 'attacked-glass': 0.95, silica: 0.7, fat: 0.35 }

function beading({ deposit, rinseAid }: Kitchen): number {
  if (deposit === 'fat') return 0.85
  if (deposit === 'soil') return 0.5
  return rinseAid < 0.7 ? 0.9 : rinseAid > 1.5 ? 0.03 : 0.15
}

function water({ hardness, solids }: Kitchen): Chances {
  const is: EvidenceId | null =
    hardness > 60
      ? 'hardness-high'
      : hardness < 17 && solids > 400
        ? 'hardness-low-tds-high'
        : hardness < 17 && solids < 100
          ? 'hard-and-tds-low'
          : null
  return (['hardness-high', 'hardness-low-tds-high', 'hard-and-tds-low', null] as const).map((one) => ({
    is: one,
    share: one === is ? 1 : 0,
  }))
}

function dose(rinseAid: number): Chances {
  const under = (limit: number): number => below(limit, rinseAid, DOSE_READING)
  const [low, right, high] = [under(0.7), under(1.15) - under(0.85), 1 - under(1.5)]
  return [
    { is: 'ra-dose-low', share: low },
    { is: 'ra-dose-high', share: high },
    { is: 'ra-dose-ok', share: right },
    { is: null, share: Math.max(0, 1 - low - right - high) },
  ]
}

function strength(detergent: number): Chances {
  const low = below(0.7, detergent, STRENGTH_READING)
  const high = 1 - below(1.4, detergent, STRENGTH_READING)
  return [
    { is: 'det-low', share: low },
    { is: 'det-high', share: high },
    { is: null, share: Math.max(0, 1 - low - high) },
  ]
}
