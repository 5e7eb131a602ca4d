import type { CauseId } from '#core/glass/causes'
import type { EvidenceId } from '#core/glass/evidence'
import { groupOf } from '#core/glass/groups'
import { outcomeShares } from '#core/glass/likelihood'
import type { GlassModel } from '#core/glass/model'
import { TESTS, type TestId } from '#core/glass/tests'
import type { SeededRandom } from '../../support/seeded-random'
import { kitchenWith } from './kitchen'
import { observe, type Seen } from './observe'
import { FIRST_PAGE, firstPage } from './pictures'

/** One kitchen as an operator meets it. A test always shows the same in the same kitchen. */
export interface SimulatedKitchen {
  readonly cause: CauseId
  readonly firstPage: ReadonlySet<EvidenceId>
  readonly shows: (test: TestId) => Seen
}

export type World = (cause: CauseId, random: SeededRandom) => SimulatedKitchen

/** Physical kitchens that know nothing of the weights. */
export const physicalWorld: World = (cause, random) => {
  const kitchen = kitchenWith(cause, random)
  const page = firstPage(kitchen, random)
  const shown = new Map(TESTS.map((test) => [test.id, observe(test.id, kitchen, random)]))
  return { cause, firstPage: page, shows: (test) => shown.get(test) ?? [] }
}

/** Kitchens drawn from the program's own weights: what they could reach if they were the truth. */
export const weightsWorld =
  (model: GlassModel): World =>
  (cause, random) => {
    const seen = (part: readonly EvidenceId[]): EvidenceId | null => {
      const group = part[0] === undefined ? [] : groupOf(part[0])
      let left = random.uniform()
      for (const [index, share] of outcomeShares(group, cause, model).entries()) {
        left -= share
        if (left < 0)
          return group.find((row, at) => at === index && part.includes(row.evidence))?.evidence ?? null
      }
      return null
    }
    const page = new Set(FIRST_PAGE.filter((sign) => seen([sign]) !== null))
    const shown = new Map<TestId, Seen>(
      TESTS.map((test) => [
        test.id,
        test.parts.map((part) => {
          const sign = FIRST_PAGE.find((known) => part.length === 1 && part[0] === known)
          return sign === undefined ? seen(part) : page.has(sign) ? sign : null
        }),
      ]),
    )
    return { cause, firstPage: page, shows: (test) => shown.get(test) ?? [] }
  }
