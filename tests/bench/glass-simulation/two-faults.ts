import { CAUSE_IDS, type CauseId } from '#core/glass/causes'
import { MOST_TESTS } from '#core/glass/diagnose'
import type { EvidenceId } from '#core/glass/evidence'
import type { GlassModel } from '#core/glass/model'
import { causesTogether } from '#core/glass/together'
import { seededRandom } from '../../support/seeded-random'
import type { Habits } from './mistakes'
import { follow, type Standing } from './operator'
import type { Seen } from './observe'
import { physicalWorld, type SimulatedKitchen } from './worlds'

/** Faults that cannot be there at once: one number cannot be both too low and too high. */
const NEVER_BOTH: readonly (readonly [CauseId, CauseId])[] = [
  ['rinse-aid-low', 'rinse-aid-high'],
  ['hard-rinse', 'high-tds'],
  ['detergent-low', 'carryover'],
]

export const PAIRS: readonly (readonly [CauseId, CauseId])[] = CAUSE_IDS.flatMap((one, index) =>
  CAUSE_IDS.slice(index + 1)
    .map((other) => [one, other] as const)
    .filter((pair) => !NEVER_BOTH.some(([a, b]) => pair[0] === a && pair[1] === b)),
)

/** Signs of "it is all in order here": they show only where both faults leave them. */
const ONLY_BOTH: readonly EvidenceId[] = [
  'acid-clears',
  'acid-no-change',
  'water-clears',
  'sheets',
  'hard-and-tds-low',
  'ra-dose-ok',
  'new-glass-ok',
]

/** What a part shows with both faults: what is wrong with either, what is right with both. */
function together(one: EvidenceId | null, other: EvidenceId | null): EvidenceId | null {
  if (one === other) return one
  const wrong = [one, other].find((is) => is !== null && !ONLY_BOTH.includes(is))
  return wrong ?? null
}

export const bothOf = (one: SimulatedKitchen, other: SimulatedKitchen): SimulatedKitchen => ({
  cause: one.cause,
  firstPage: new Set([...one.firstPage, ...other.firstPage]),
  shows: (test) => {
    const second: Seen = other.shows(test)
    return one.shows(test).map((is, part) => together(is, second[part] ?? null))
  },
})

export interface TwoFaults {
  readonly kitchens: number
  /** parts of the kitchens, after five tests */
  readonly oneStandsFirst: number
  readonly oneInFirstTwo: number
  readonly bothInFirstThree: number
  /** the second cause is named beside the first, or the first two are not told apart */
  readonly namedBeside: number
  readonly notSeparated: number
  /** the same in kitchens with one fault: a second cause named that is not there */
  readonly falselyNamed: number
}

const mean = (values: readonly boolean[]): number =>
  values.filter(Boolean).length / Math.max(1, values.length)

/** Kitchens with two faults, `perPair` for each pair that can be. */
export function twoFaults(perPair: number, habits: Habits, model: GlassModel, seed: number): TwoFaults {
  const random = seededRandom(seed)
  const end = (kitchen: SimulatedKitchen): Standing | undefined =>
    follow(kitchen, habits, 'gain', MOST_TESTS, model, random).at(-1)
  const rows = PAIRS.flatMap((pair) =>
    Array.from({ length: perPair }, () => {
      const [one, other] = pair
      const last = end(bothOf(physicalWorld(one, random), physicalWorld(other, random)))
      const order = last?.ranking.causes.map((row) => row.cause) ?? []
      const beside = last === undefined ? [] : causesTogether(last.ranking, last.findings, model)
      const among = (count: number): number => pair.filter((id) => order.slice(0, count).includes(id)).length
      return {
        first: among(1) > 0,
        two: among(2) > 0,
        three: among(3) === 2,
        beside: among(1) > 0 && pair.some((id) => id !== order[0] && beside.includes(id)),
        open: last?.ranking.separated === false,
      }
    }),
  )
  const single = CAUSE_IDS.flatMap((cause) =>
    Array.from({ length: perPair * 4 }, () => {
      const last = end(physicalWorld(cause, random))
      return (
        last !== undefined && causesTogether(last.ranking, last.findings, model).some((id) => id !== cause)
      )
    }),
  )
  return {
    kitchens: rows.length,
    oneStandsFirst: mean(rows.map((row) => row.first)),
    oneInFirstTwo: mean(rows.map((row) => row.two)),
    bothInFirstThree: mean(rows.map((row) => row.three)),
    namedBeside: mean(rows.map((row) => row.beside)),
    notSeparated: mean(rows.map((row) => row.open)),
    falselyNamed: mean(single),
  }
}
