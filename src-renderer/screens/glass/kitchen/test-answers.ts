import type { EvidenceId } from '#core/glass/evidence'
import type { TestPage } from '#core/glass/words/tests'
import type { GlassAnswer } from '#core/records/index'

export const itemsOf = (page: TestPage): readonly EvidenceId[] =>
  page.kind === 'pick-one' ? page.items : page.choices.map((choice) => choice.is)

/** One outcome is so, or none of them (null). */
export const oneIs = (page: TestPage, is: EvidenceId | null): readonly GlassAnswer[] =>
  itemsOf(page).map((evidence) => ({ evidence, answer: evidence === is ? 'yes' : 'no' }))

/** What was picked is so; the rest is not when all was looked at, else open. */
export const manyAre = (
  page: TestPage,
  picked: readonly EvidenceId[],
  lookedAtAll: boolean,
): readonly GlassAnswer[] =>
  itemsOf(page).map((evidence) => ({
    evidence,
    answer: picked.includes(evidence) ? 'yes' : lookedAtAll ? 'no' : 'unknown',
  }))

/** Skipped or not known: never a no. */
export const notKnown = (pages: readonly TestPage[]): readonly GlassAnswer[] =>
  pages.flatMap((page) => itemsOf(page).map((evidence) => ({ evidence, answer: 'unknown' })))
