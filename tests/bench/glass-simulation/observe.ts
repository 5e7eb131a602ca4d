import type { EvidenceId } from '#core/glass/evidence'
import type { TestId } from '#core/glass/tests'
import type { Deposit, Kitchen } from './kitchen'
import type { SeededRandom } from '../../support/seeded-random'
import { chance, logNormal } from './draw'

/** What a careful person would see in this kitchen: one outcome, or none, per part of the test. */
export type Seen = readonly (EvidenceId | null)[]

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

const fact = (evidence: EvidenceId, is: boolean): EvidenceId | null => (is ? evidence : null)

export function observe(test: TestId, kitchen: Kitchen, random: SeededRandom): Seen {
  const { deposit } = kitchen
  const sign = (evidence: EvidenceId, probability: number): EvidenceId | null =>
    chance(random, probability) ? evidence : null
  switch (test) {
    case 'close-look':
      return [
        sign('iridescent', SHEEN[deposit]),
        sign('foam-or-streaks', kitchen.cause === 'tank-dirty' ? 0.5 : STREAKS[deposit]),
        sign('rim-marks', deposit === 'fat' ? 0.6 : kitchen.cause === 'handling' ? 0.35 : 0.05),
        sign(
          'matte-permanent',
          deposit === 'attacked-glass'
            ? 0.9
            : deposit === 'silica'
              ? 0.6
              : deposit === 'carbonate'
                ? 0.12
                : 0.04,
        ),
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
      if (chance(random, ACID_REMOVES[deposit])) return ['acid-clears']
      return [sign('acid-no-change', ACID_LEAVES[deposit])]
    case 'pin':
      return [sign('scratch-removes', PIN_LIFTS[deposit])]
    case 'wet-glass': {
      const beads =
        deposit === 'fat'
          ? 0.85
          : deposit === 'soil'
            ? 0.5
            : kitchen.rinseAid < 0.7
              ? 0.9
              : kitchen.rinseAid > 1.5
                ? 0.03
                : 0.15
      return [
        chance(random, beads) ? 'beads' : sign('sheets', 0.85),
        sign(
          'salt-test-fails',
          deposit === 'fat' ? 0.8 : deposit === 'soil' ? 0.35 : deposit === 'surfactant' ? 0.2 : 0.05,
        ),
      ]
    }
    case 'strips':
      return [
        sign('ph-high-on-glass', deposit === 'alkali' ? 0.88 : kitchen.detergent > 1.4 ? 0.25 : 0.04),
        fact('hardness-high', kitchen.hardness * logNormal(random, 1, 0.2) > 60),
      ]
    case 'water-meters':
      return [
        kitchen.hardness > 60
          ? 'hardness-high'
          : kitchen.hardness < 17 && kitchen.solids > 400
            ? 'hardness-low-tds-high'
            : fact('hard-and-tds-low', kitchen.hardness < 17 && kitchen.solids < 100),
      ]
    case 'new-glass': {
      const clear =
        deposit === 'attacked-glass' ? 0.95 : deposit === 'silica' ? 0.7 : deposit === 'fat' ? 0.35 : 0.07
      return [chance(random, clear) ? 'new-glass-ok' : sign('new-glass-bad', 0.9)]
    }

    case 'measured': {
      const dose = kitchen.rinseAid * logNormal(random, 1, 0.03)
      const strength = kitchen.detergent * logNormal(random, 1, 0.08)
      return [
        dose < 0.7
          ? 'ra-dose-low'
          : dose > 1.5
            ? 'ra-dose-high'
            : fact('ra-dose-ok', Math.abs(dose - 1) <= 0.15),
        strength < 0.7 ? 'det-low' : fact('det-high', strength > 1.4),
      ]
    }
  }
}
