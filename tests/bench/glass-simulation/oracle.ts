import { CAUSE_IDS, type CauseId } from '#core/glass/causes'
import { TESTS, type TestId } from '#core/glass/tests'
import { seededRandom, type SeededRandom } from '../../support/seeded-random'
import { partChances } from './chances'
import { kitchenWith } from './kitchen'
import { firstPageAnswers, mistaken, answersOfStart, answersOfTest, partsOf, type Habits } from './mistakes'
import { firstPageOdds } from './pictures'
import type { SimulatedKitchen } from './worlds'

/**
 * What could be reached at best: someone who knows how the simulated kitchens are made, to the last number, how often
 * each test shows what in each of them and how often people err, and who works out the exact probability of every cause
 * (Bayes' rule, over `perCause` kitchens drawn for each). The next test is the one after which the first two causes are
 * expected to hold most of the probability; early on, when that says little, the one expected to tell most. One step
 * ahead, so a still better order may exist; with every test asked the order no longer matters.
 */
export interface Oracle {
  /** the causes in order of probability, after the first page and after each test */
  play(
    kitchen: SimulatedKitchen,
    habits: Habits,
    most: number,
    random: SeededRandom,
  ): readonly (readonly CauseId[])[]
}

interface Outcomes {
  readonly id: TestId
  /** every answer there is to the test, one outcome (by its place) per part */
  readonly answers: readonly (readonly number[])[]
  readonly sizes: readonly number[]
}

const combine = (sizes: readonly number[]): readonly (readonly number[])[] =>
  sizes.reduce<readonly (readonly number[])[]>(
    (all, size) => all.flatMap((before) => Array.from({ length: size }, (_, k) => [...before, k])),
    [[]],
  )

const OUTCOMES: readonly Outcomes[] = TESTS.map((test) => {
  const sizes = test.parts.map((part) => part.length + 1)
  return { id: test.id, sizes, answers: combine(sizes) }
})

/**
 * How often an answer is given, parts independent: page by page right, or one part of the page mistaken for another
 * outcome of that part (each part alike, each other outcome alike). Source: the rule of `mistaken`.
 */
export function toldShare(
  parts: readonly (readonly number[])[],
  told: readonly number[],
  pages: readonly (readonly number[])[],
  wrong: number,
): number {
  return pages.reduce((product, page) => {
    const each = page.map((part) => parts[part]?.[told[part] ?? 0] ?? 0)
    const right = each.reduce((all, share) => all * share, 1)
    const slips = each.reduce((sum, share, at) => {
      const others = each.reduce((all, other, index) => (index === at ? all : all * other), 1)
      return sum + (others * (1 - share)) / ((parts[page[at] ?? 0]?.length ?? 2) - 1)
    }, 0)
    return product * ((1 - wrong) * right + (wrong / page.length) * slips)
  }, 1)
}

export function oracle(
  perCause: number,
  { wrong, wrongPer }: Pick<Habits, 'wrong' | 'wrongPer'>,
  seed: number,
  infoUntil = 3,
): Oracle {
  const random = seededRandom(seed)
  const kitchens = CAUSE_IDS.flatMap((cause) =>
    Array.from({ length: perCause }, () => kitchenWith(cause, random)),
  )
  const causeOf = kitchens.map((kitchen) => CAUSE_IDS.indexOf(kitchen.cause))
  const pages = kitchens.map((kitchen) => firstPageOdds(kitchen))
  const tables = OUTCOMES.map(({ id, answers, sizes }) => {
    const table = new Float64Array(kitchens.length * answers.length)
    kitchens.forEach((kitchen, at) => {
      const parts = partChances(id, kitchen).map((chances) => chances.map(({ share }) => share))
      answers.forEach((told, k) => {
        table[at * answers.length + k] = toldShare(parts, told, answersOfTest(id, wrongPer), wrong)
      })
    })
    return { id, answers, sizes, table }
  })

  const byCause = (weights: Float64Array): Float64Array => {
    const sums = new Float64Array(CAUSE_IDS.length)
    weights.forEach((weight, at) => {
      const cause = causeOf[at] ?? 0
      sums[cause] = (sums[cause] ?? 0) + weight
    })
    return sums
  }
  const ordered = (weights: Float64Array): readonly CauseId[] => {
    const sums = byCause(weights)
    return CAUSE_IDS.map((cause, at) => ({ cause, sum: sums[at] ?? 0 }))
      .toSorted((a, b) => b.sum - a.sum)
      .map((row) => row.cause)
  }

  /** expected share of the first two after the test, and expected fall of the doubt, nats */
  const worth = (weights: Float64Array, live: readonly number[], table: Float64Array, answers: number) => {
    const sums = new Float64Array(answers * CAUSE_IDS.length)
    for (const at of live) {
      const weight = weights[at] ?? 0
      const cause = causeOf[at] ?? 0
      for (let k = 0; k < answers; k += 1) {
        const cell = k * CAUSE_IDS.length + cause
        sums[cell] = (sums[cell] ?? 0) + weight * (table[at * answers + k] ?? 0)
      }
    }
    let firstTwo = 0
    let doubt = 0
    for (let k = 0; k < answers; k += 1) {
      let [first, second, total, plogp] = [0, 0, 0, 0]
      for (let cause = 0; cause < CAUSE_IDS.length; cause += 1) {
        const share = sums[k * CAUSE_IDS.length + cause] ?? 0
        total += share
        if (share > 0) plogp += share * Math.log(share)
        if (share > first) [first, second] = [share, first]
        else if (share > second) second = share
      }
      firstTwo += first + second
      if (total > 0) doubt += total * Math.log(total) - plogp
    }
    return { firstTwo, doubt }
  }

  return {
    play(kitchen, habits, most, chanceOf) {
      const page = firstPageAnswers(kitchen, habits, chanceOf).map(({ answer }) => (answer === 'yes' ? 0 : 1))
      const weights = new Float64Array(kitchens.length)
      pages.forEach((odds, at) => {
        weights[at] = toldShare(
          odds.map((share) => [share, 1 - share]),
          page,
          answersOfStart(wrongPer),
          wrong,
        )
      })
      const orders = [ordered(weights)]
      const left = new Set(tables.filter(({ id }) => !habits.cannot.includes(id)))
      for (let asked = 0; asked < most && left.size > 0; asked += 1) {
        scale(weights)
        const live = [...weights.keys()].filter((at) => (weights[at] ?? 0) > 1e-9)
        const judged = [...left].map((test) => ({
          test,
          ...worth(weights, live, test.table, test.answers.length),
        }))
        const early = asked < infoUntil
        const best = judged.toSorted((a, b) =>
          early ? a.doubt - b.doubt : b.firstTwo - a.firstTwo || a.doubt - b.doubt,
        )[0]
        if (best === undefined) break
        left.delete(best.test)
        const { id, answers, table } = best.test
        const seen = mistaken(id, kitchen.shows(id), habits, chanceOf)
        const parts = partsOf(id)
        const told = seen.map((is, part) => {
          const outcomes: readonly (string | null)[] = [...(parts[part] ?? []), null]
          return outcomes.indexOf(is)
        })
        const k = answers.findIndex((row) => row.every((outcome, part) => outcome === told[part]))
        weights.forEach((weight, at) => {
          weights[at] = weight * (table[at * answers.length + k] ?? 0)
        })
        orders.push(ordered(weights))
      }
      return orders
    },
  }
}

function scale(weights: Float64Array): void {
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  if (total > 0)
    weights.forEach((weight, at) => {
      weights[at] = weight / total
    })
}
