import type { EvidenceId } from '#core/glass/evidence'
import type { SeededRandom } from '../../support/seeded-random'
import { chance } from './draw'
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

/** What the first page asks: the pictures, the spread, the other ware, and since when. */
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
] as const satisfies readonly EvidenceId[]

/** Signs a careful person picks on the first page; a picture that does not fit is picked in 3 of 100 kitchens. */
export function firstPage(kitchen: Kitchen, random: SeededRandom): ReadonlySet<EvidenceId> {
  const drops = (['rinse-aid-low', 'rinse-temp-low', 'handling'] as const).some((id) => id === kitchen.cause)
  const attacked = kitchen.deposit === 'attacked-glass'
  const slow = attacked || kitchen.deposit === 'silica'
  const odds: Odds = {
    ...(drops ? DROPS : BY_DEPOSIT[kitchen.deposit]),
    'one-zone': kitchen.cause === 'rinse-flow-poor' ? 0.7 : 0.1,
    'other-ware-too': attacked ? 0 : 0.4,
    'began-suddenly': slow ? 0.03 : 0.4,
  }
  return new Set(FIRST_PAGE.filter((sign) => chance(random, odds[sign] ?? 0.03)))
}
