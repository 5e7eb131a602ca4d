import type { EvidenceId } from '#core/glass/evidence'
import type { SeededRandom } from '../../support/seeded-random'
import { chance } from './draw'
import type { CauseId } from '#core/glass/causes'
import { NOTICED } from '#core/glass/signs'
import type { Kitchen } from './kitchen'

type Odds = Readonly<Partial<Record<EvidenceId, number>>>

const DROPS: Odds = { 'clear-spots': 0.7, 'white-film': 0.3 }
const BY_DEPOSIT = {
  carbonate: { 'white-film': 0.7, 'clear-spots': 0.4 },
  salts: DROPS,
  alkali: { 'white-film': 0.6, 'foam-or-streaks': 0.4 },
  surfactant: { 'foam-or-streaks': 0.65, iridescent: 0.45 },
  soil: { 'food-soil': 0.6, 'white-film': 0.4 },
  fat: { 'rim-marks': 0.65, 'food-soil': 0.1 },
  'attacked-glass': { 'matte-permanent': 0.7, 'white-film': 0.3, iridescent: 0.2 },
  silica: { 'white-film': 0.5, iridescent: 0.4, 'matte-permanent': 0.35 },
} as const satisfies Record<Kitchen['deposit'], Odds>

/** What the first pages ask before any test. */
export const FIRST_PAGE = [
  'clear-spots',
  'white-film',
  'foam-or-streaks',
  'iridescent',
  'food-soil',
  'rim-marks',
  'matte-permanent',
  'one-zone',
  'other-ware-too',
  'began-suddenly',
  ...NOTICED,
] as const satisfies readonly EvidenceId[]

/** The first pages by the places of their signs in `FIRST_PAGE`: pictures, rack, ware, since when, what else. */
export const PAGES: readonly (readonly number[])[] = [
  [0, 1, 2, 3, 4, 5, 6],
  [7],
  [8],
  [9],
  [10, 11, 12, 13, 14, 15, 16],
]

/**
 * Signs that staff notice without a test, and the causes the trade's table names for them. One rule for all, its
 * odds laid down before the first run: seen in 6 of 10 kitchens with such a cause, in 1 of 10 others.
 */
const NAMED_FOR: Readonly<Partial<Record<EvidenceId, readonly CauseId[]>>> = {
  'dries-slowly': ['rinse-aid-low', 'rinse-temp-low'],
  'feels-slippery': ['carryover'],
  'feels-greasy': ['detergent-low', 'grease'],
  'head-collapses': ['rinse-aid-high', 'grease'],
  'worse-late': ['detergent-low', 'tank-dirty'],
  'chalk-crust': ['hard-rinse'],
}

/** How often a careful person picks each sign; a picture that does not fit is picked in 3 of 100 kitchens. */
export function firstPageOdds(kitchen: Kitchen): readonly number[] {
  const drops = (['rinse-aid-low', 'rinse-temp-low', 'handling'] as const).some((id) => id === kitchen.cause)
  const attacked = kitchen.deposit === 'attacked-glass'
  const slow = attacked || kitchen.deposit === 'silica'
  const odds: Odds = {
    ...(drops ? DROPS : BY_DEPOSIT[kitchen.deposit]),
    'one-zone': kitchen.cause === 'rinse-flow-poor' ? 0.7 : 0.1,
    'other-ware-too': attacked ? 0 : 0.4,
    'began-suddenly': slow ? 0.03 : 0.4,
    towelled: kitchen.towelled ? 1 : 0,
  }
  return FIRST_PAGE.map((sign) => {
    const causes = (NAMED_FOR as Readonly<Record<string, readonly CauseId[] | undefined>>)[sign]
    return causes === undefined ? (odds[sign] ?? 0.03) : causes.includes(kitchen.cause) ? 0.6 : 0.1
  })
}

/** The signs a careful person picks on the first page. */
export function firstPage(kitchen: Kitchen, random: SeededRandom): ReadonlySet<EvidenceId> {
  const odds = firstPageOdds(kitchen)
  return new Set(FIRST_PAGE.filter((_, index) => chance(random, odds[index] ?? 0)))
}
