import type { EvidenceId } from '#core/glass/evidence'
import type { TestId } from '#core/glass/tests'
import type { SeededRandom } from '../../support/seeded-random'
import { partChances, type Chances } from './chances'
import type { Kitchen } from './kitchen'

/** What a careful person sees in this kitchen: one outcome, or none, per part of the test. */
export type Seen = readonly (EvidenceId | null)[]

export const observe = (test: TestId, kitchen: Kitchen, random: SeededRandom): Seen =>
  partChances(test, kitchen).map((chances) => drawn(chances, random))

function drawn(chances: Chances, random: SeededRandom): EvidenceId | null {
  let left = random.uniform()
  for (const { is, share } of chances) {
    left -= share
    if (left < 0) return is
  }
  return chances.at(-1)?.is ?? null
}
