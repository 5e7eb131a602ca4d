import { MOST_TESTS } from '#core/glass/diagnose'
import type { Finding } from '#core/glass/findings'
import type { GlassModel } from '#core/glass/model'
import { nextTests } from '#core/glass/next-test'
import { rankCauses, type Ranking } from '#core/glass/rank'
import { TESTS, type TestId } from '#core/glass/tests'
import type { SeededRandom } from '../../support/seeded-random'
import { shuffled } from './draw'
import { firstPageAnswers, mistaken, partsOf, type Habits } from './mistakes'
import type { Seen } from './observe'
import type { SimulatedKitchen } from './worlds'

export type Order = 'gain' | 'easiest-first' | 'bench' | 'random'

/** The order in which the trade's bench sheet lists the tests. */
const BENCH_ORDER: readonly TestId[] = [
  'water-wipe',
  'acid-wipe',
  'pin',
  'wet-glass',
  'new-glass',
  'water-meters',
  'strips',
  'measured',
  'gauges',
  'round',
  'close-look',
]

/** What is known and how the causes stand. */
export interface Standing {
  readonly findings: readonly Finding[]
  readonly ranking: Ranking
}

/** The ranking after the first pages and after each test. */
export const play = (...how: Parameters<typeof follow>): readonly Ranking[] =>
  follow(...how).map(({ ranking }) => ranking)

/** The findings and the ranking after the first pages and after each test. */
export function follow(
  kitchen: SimulatedKitchen,
  habits: Habits,
  order: Order,
  most: number,
  model: GlassModel,
  random: SeededRandom,
): readonly Standing[] {
  const all = TESTS.map((test) => test.id)
  const fixed = order === 'random' ? shuffled(random, all) : order === 'bench' ? BENCH_ORDER : all
  const record = habits.record.flatMap((test) => told(test, kitchen.shows(test), 'record'))
  const first = firstPageAnswers(kitchen, habits, random)
  const answers: Finding[] = []
  // as the record of a check is read: what was picked on the first pages stays picked
  const findings = (): readonly Finding[] => [
    ...record,
    ...first.filter(({ answer }) => answer === 'no'),
    ...answers,
    ...first.filter(({ answer }) => answer === 'yes'),
  ]
  const queue = fixed.filter((test) => !habits.cannot.includes(test))
  const done: TestId[] = []
  const standing = (): Standing => {
    const all = findings()
    return { findings: all, ranking: rankCauses(all, model) }
  }
  let now = standing()
  const path = [now]
  for (let asked = 0; asked < most; asked += 1) {
    const test =
      order === 'gain'
        ? nextTests(now.ranking, now.findings, model, {
            asked: done,
            impossible: habits.cannot,
            left: MOST_TESTS - asked,
          })[0]?.test
        : queue[asked]
    if (test === undefined) break
    done.push(test)
    answers.push(...told(test, mistaken(test, kitchen.shows(test), habits, random), 'operator'))
    now = standing()
    path.push(now)
  }
  return path
}

const told = (test: TestId, seen: Seen, from: Finding['from']): readonly Finding[] =>
  partsOf(test).flatMap((part, index) =>
    part.map((evidence) => ({ evidence, answer: evidence === seen[index] ? 'yes' : 'no', from }) as const),
  )
