import type { CauseId } from './causes'
import type { EvidenceId } from './evidence'
import { bestTold, expectedGain } from './expected-gain'
import { settle, type Finding } from './findings'
import { groupOf, type Group } from './groups'
import type { GlassModel } from './model'
import type { Ranking } from './rank'
import { sharesOf } from './shares'
import { EFFORT, TESTS, type GlassTest, type TestId } from './tests'

/** A test worth doing next, and why. */
export interface NextTest {
  readonly test: TestId
  /** expected information about the cause, bits */
  readonly gain: number
  /** gain over the test's effort: what the order follows */
  readonly gainPerEffort: number
  /** the two likely causes this test tells apart best */
  readonly tells: readonly [CauseId, CauseId] | null
}

/** JUDGEMENT: a test that promises less is not worth asking, bits. */
export const LEAST_GAIN = 0.02
/** JUDGEMENT: scores are divided by this before a test is chosen, because overlapping observations make them too sure. */
const SOFTNESS = 1.5
/** How many of the likeliest causes the reason for a test is looked for among. */
const REASON_AMONG = 4

/**
 * The tests not yet answered, the best first: expected information about the cause over effort. An answer "unknown"
 * counts as asked, never as no. Tests in `impossible` are left out (no softener, say). No problems; an empty list when
 * nothing is worth asking.
 */
export function nextTests(
  ranking: Ranking,
  findings: readonly Finding[],
  model: GlassModel,
  impossible: readonly TestId[] = [],
): readonly NextTest[] {
  const answers = new Map(settle(findings).map((finding) => [finding.evidence, finding.answer]))
  const shares = sharesOf(
    ranking.causes.map((row) => row.score),
    SOFTNESS,
  )
  const suspicions = ranking.causes.map((row, index) => ({ cause: row.cause, share: shares[index] ?? 0 }))
  return TESTS.filter((test) => !impossible.includes(test.id) && !isAsked(test, findings))
    .map((test) => {
      const parts = test.parts.map((part) => openGroup(part, answers)).filter((group) => group.length > 0)
      const gain = expectedGain(parts, suspicions, model)
      return {
        test: test.id,
        gain,
        gainPerEffort: gain / EFFORT[test.effort],
        tells: bestTold(parts, suspicions.slice(0, REASON_AMONG), model),
      }
    })
    .filter((next) => next.gain >= LEAST_GAIN)
    .sort((a, b) => b.gainPerEffort - a.gainPerEffort)
}

/** Whether every item of the test has an answer, be it "unknown"; one outcome seen closes its part. */
export function isAsked(test: GlassTest, findings: readonly Finding[]): boolean {
  const answered = new Map(findings.map((finding) => [finding.evidence, finding.answer]))
  return test.parts.every(
    (part) =>
      part.every((evidence) => answered.has(evidence)) ||
      part.some((evidence) => answered.get(evidence) === 'yes'),
  )
}

/** The outcomes of a part that are still open; none when one of its group was seen. */
function openGroup(part: readonly EvidenceId[], answers: ReadonlyMap<EvidenceId, string>): Group {
  const group = part[0] === undefined ? [] : groupOf(part[0])
  if (group.some((row) => answers.get(row.evidence) === 'yes')) return []
  const open = group.filter((row) => part.includes(row.evidence) && !answers.has(row.evidence))
  return open.length === group.length ? group : open
}
