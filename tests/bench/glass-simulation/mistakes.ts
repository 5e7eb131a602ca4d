import type { Finding } from '#core/glass/findings'
import { TESTS, type TestId } from '#core/glass/tests'
import type { EvidenceId } from '#core/glass/evidence'
import type { SeededRandom } from '../../support/seeded-random'
import { chance, pick } from './draw'
import type { Seen } from './observe'
import { FIRST_PAGE, PAGES } from './pictures'
import type { SimulatedKitchen } from './worlds'

export interface Habits {
  /** part of the answers that are wrong */
  readonly wrong: number
  /** a wrong answer has one of its signs wrong: each first page and each test is an answer, or every single sign is */
  readonly wrongPer: 'answer' | 'sign'
  /** tests this operator cannot do */
  readonly cannot: readonly TestId[]
  /** what an earlier visit recorded */
  readonly record: readonly TestId[]
}

export const partsOf = (test: TestId): readonly (readonly EvidenceId[])[] =>
  TESTS.find((row) => row.id === test)?.parts ?? []

/** What can be wrong together: the places of the parts of a test, answer by answer. */
export const answersOfTest = (test: TestId, wrongPer: Habits['wrongPer']): readonly (readonly number[])[] =>
  inAnswers([[...partsOf(test).keys()]], wrongPer)

/** The same for the signs of the first pages. */
export const answersOfStart = (wrongPer: Habits['wrongPer']): readonly (readonly number[])[] =>
  inAnswers(PAGES, wrongPer)

const inAnswers = (
  pages: readonly (readonly number[])[],
  wrongPer: Habits['wrongPer'],
): readonly (readonly number[])[] => (wrongPer === 'answer' ? pages : pages.flat().map((place) => [place]))

/** The places that are told wrong: with the habit's chance one place of each page. */
const slips = (
  pages: readonly (readonly number[])[],
  wrong: number,
  random: SeededRandom,
): ReadonlySet<number> =>
  new Set(
    pages.flatMap((page) => (chance(random, wrong) ? (page.slice(random.below(page.length))[0] ?? []) : [])),
  )

/** The first pages: what is picked is seen, the rest is not. */
export function firstPageAnswers(
  kitchen: SimulatedKitchen,
  habits: Habits,
  random: SeededRandom,
): readonly Finding[] {
  const wrong = slips(answersOfStart(habits.wrongPer), habits.wrong, random)
  return FIRST_PAGE.map((evidence, at) => {
    const yes = kitchen.firstPage.has(evidence) !== wrong.has(at)
    return { evidence, answer: yes ? 'yes' : 'no', from: 'operator' }
  })
}

/** The answer a person gives to a test: what shows, or with the habit's chance something else. */
export function mistaken(test: TestId, seen: Seen, habits: Habits, random: SeededRandom): Seen {
  const wrong = slips(answersOfTest(test, habits.wrongPer), habits.wrong, random)
  return seen.map((right, at) => {
    if (!wrong.has(at)) return right
    const [first, ...rest] = [...(partsOf(test)[at] ?? []), null].filter((outcome) => outcome !== right)
    return first === undefined ? right : pick(random, [first, ...rest])
  })
}
