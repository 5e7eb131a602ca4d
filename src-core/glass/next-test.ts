import type { CauseId } from './causes'
import { bestTold, expectedFirstTwo, expectedGain, firstTwo, type OpenPart } from './expected-gain'
import { settle, type Finding } from './findings'
import { groupOf } from './groups'
import type { GlassModel } from './model'
import type { Ranking } from './rank'
import { sharesOf } from './shares'
import { EFFORT, TESTS, type GlassTest, type TestId } from './tests'

/** A test worth doing next, and why. */
export interface NextTest {
  readonly test: TestId
  /** expected information about the cause, bits */
  readonly gain: number
  /** gain over the test's effort: what the order follows while tests are left */
  readonly gainPerEffort: number
  /** expected rise of the chance that the true cause stands first or second: what the last tests are chosen by */
  readonly rise: number
  /** the two likely causes this test tells apart best */
  readonly tells: readonly [CauseId, CauseId] | null
}

export interface Asking {
  /** tests asked already, answered or skipped */
  readonly asked?: readonly TestId[]
  /** tests that cannot be done here (no machine, so no gauges) */
  readonly impossible?: readonly TestId[]
  /** tests that may still be asked; null: no end */
  readonly left?: number | null
}

/** JUDGEMENT: a test that promises less is not worth asking, bits. */
export const LEAST_GAIN = 0.02
/** JUDGEMENT: scores are divided by this before a test is chosen, because overlapping observations make them too sure. */
const SOFTNESS = 1.5
/** How many of the likeliest causes the reason for a test is looked for among. */
const REASON_AMONG = 4
/** With so few tests left, what counts is that the cause gets among the first two. */
export const LAST_TESTS = 2
/** What a bit per effort counts beside that: decides where no test changes who stands first or second. */
const INFORMATION_COUNTS = 0.05

/**
 * The tests not yet asked, the best first: expected information about the cause over effort; with two tests left or
 * fewer, the expected rise of the chance that the true cause is first or second. An answer "unknown" counts as asked,
 * never as no. No problems; an empty list when nothing is worth asking.
 */
export function nextTests(
  ranking: Ranking,
  findings: readonly Finding[],
  model: GlassModel,
  { asked = [], impossible = [], left = null }: Asking = {},
): readonly NextTest[] {
  const suspicions = suspicionsOf(ranking)
  const now = firstTwo(suspicions.map(({ share }) => share))
  const last = left !== null && left <= LAST_TESTS
  const worth = (next: NextTest): number =>
    last ? next.rise + INFORMATION_COUNTS * next.gainPerEffort : next.gainPerEffort
  return (TESTS as readonly (GlassTest & { readonly id: TestId })[])
    .filter(({ id }) => !impossible.includes(id) && !asked.includes(id))
    .map((test) => {
      const parts = openParts(test, findings)
      const gain = expectedGain(parts, suspicions, model)
      return {
        test: test.id,
        gain,
        gainPerEffort: gain / EFFORT[test.effort],
        rise: Math.max(0, expectedFirstTwo(parts, suspicions, model) - now),
        tells: bestTold(parts, suspicions.slice(0, REASON_AMONG), model),
      }
    })
    .filter((next) => next.gain >= LEAST_GAIN)
    .sort((a, b) => worth(b) - worth(a))
}

/** How likely the first two causes hold the true one, 0 to 1, told with the same caution as tests are chosen with. */
export const firstTwoShare = (ranking: Ranking): number =>
  firstTwo(suspicionsOf(ranking).map(({ share }) => share))

function suspicionsOf({ causes }: Ranking): readonly { readonly cause: CauseId; readonly share: number }[] {
  const shares = sharesOf(
    causes.map((row) => row.score),
    SOFTNESS,
  )
  return causes.map((row, index) => ({ cause: row.cause, share: shares[index] ?? 0 }))
}

/** The parts of a test that can still tell something. */
function openParts(test: GlassTest, findings: readonly Finding[]): readonly OpenPart[] {
  const settled = new Map(settle(findings).map((finding) => [finding.evidence, finding]))
  const answered = new Set(findings.map((finding) => finding.evidence))
  return test.parts.flatMap((part): readonly OpenPart[] => {
    const group = part[0] === undefined ? [] : groupOf(part[0])
    if (group.some((row) => settled.get(row.evidence)?.answer === 'yes')) return []
    const open = group.filter(
      (row) =>
        part.includes(row.evidence) &&
        (!answered.has(row.evidence) ||
          (test.secondLook === true && settled.get(row.evidence)?.from !== 'record')),
    )
    if (open.length === 0) return []
    const glanced = open.some((row) => settled.has(row.evidence))
    return [{ group: open.length === group.length ? group : open, glanced }]
  })
}
