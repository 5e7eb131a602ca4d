import type { EvidenceId } from '#core/glass/evidence'
import type { Finding } from '#core/glass/findings'
import type { GlassModel } from '#core/glass/model'
import { nextTests } from '#core/glass/next-test'
import { rankCauses, type Ranking } from '#core/glass/rank'
import { TESTS, type TestId } from '#core/glass/tests'
import type { SeededRandom } from '../../support/seeded-random'
import { chance, pick, shuffled } from './draw'
import type { Seen } from './observe'
import { FIRST_PAGE } from './pictures'
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

export interface Habits {
  /** part of the answers that are wrong */
  readonly wrong: number
  /** whether every single fact of an answer can be wrong, or one fact of one answer */
  readonly wrongPer: 'answer' | 'fact'
  /** tests this operator cannot do */
  readonly cannot: readonly TestId[]
  /** what an earlier visit recorded */
  readonly record: readonly TestId[]
}

/** The ranking after the first page and after each test. */
export function play(
  kitchen: SimulatedKitchen,
  habits: Habits,
  order: Order,
  most: number,
  model: GlassModel,
  random: SeededRandom,
): readonly Ranking[] {
  const all = TESTS.map((test) => test.id)
  const fixed = order === 'random' ? shuffled(random, all) : order === 'bench' ? BENCH_ORDER : all
  let findings: readonly Finding[] = [
    ...habits.record.flatMap((test) => told(test, kitchen.shows(test), 'record')),
    ...firstAnswers(kitchen, habits, random),
  ]
  const queue = fixed.filter((test) => !habits.cannot.includes(test))
  const rankings = [rankCauses(findings, model)]
  for (let asked = 0; asked < most; asked += 1) {
    const ranking = rankings[asked]
    const test =
      order === 'gain' && ranking !== undefined
        ? nextTests(ranking, findings, model, habits.cannot)[0]?.test
        : queue[asked]
    if (test === undefined) break
    findings = [...findings, ...told(test, mistaken(test, kitchen.shows(test), habits, random), 'operator')]
    rankings.push(rankCauses(findings, model))
  }
  return rankings
}

/** The first page: what is picked is seen, the rest of the page is not. */
function firstAnswers(kitchen: SimulatedKitchen, habits: Habits, random: SeededRandom): readonly Finding[] {
  const flip = chance(random, habits.wrong) ? pick(random, FIRST_PAGE) : null
  return FIRST_PAGE.map((evidence) => {
    const wrong = habits.wrongPer === 'answer' ? evidence === flip : chance(random, habits.wrong)
    const yes = kitchen.firstPage.has(evidence) !== wrong
    return { evidence, answer: yes ? 'yes' : 'no', from: 'operator' }
  })
}

function mistaken(test: TestId, seen: Seen, habits: Habits, random: SeededRandom): Seen {
  const flip = chance(random, habits.wrong) ? random.below(seen.length) : -1
  return seen.map((right, index) => {
    const wrong = habits.wrongPer === 'answer' ? index === flip : chance(random, habits.wrong)
    if (!wrong) return right
    const [first, ...rest] = [...(partsOf(test)[index] ?? []), null].filter((outcome) => outcome !== right)
    return first === undefined ? right : pick(random, [first, ...rest])
  })
}

const partsOf = (test: TestId): readonly (readonly EvidenceId[])[] =>
  TESTS.find((row) => row.id === test)?.parts ?? []

const told = (test: TestId, seen: Seen, from: Finding['from']): readonly Finding[] =>
  partsOf(test).flatMap((part, index) =>
    part.map((evidence) => ({ evidence, answer: evidence === seen[index] ? 'yes' : 'no', from }) as const),
  )
