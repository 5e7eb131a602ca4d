import type { EvidenceId } from '#core/glass/evidence'
import type { Finding } from '#core/glass/findings'
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

/** The pages and choices the record has not answered yet; all of them should it have answered everything. */
export function openPages(pages: readonly TestPage[], findings: readonly Finding[]): readonly TestPage[] {
  const known = new Map(
    findings.filter((finding) => finding.from === 'record').map((one) => [one.evidence, one.answer]),
  )
  const open = pages.flatMap((page): readonly TestPage[] => {
    if (page.kind === 'pick-many') {
      const choices = page.choices.filter((choice) => !known.has(choice.is))
      return choices.length === 0 ? [] : [{ ...page, choices }]
    }
    const told =
      page.items.every((item) => known.has(item)) || page.items.some((item) => known.get(item) === 'yes')
    return told ? [] : [page]
  })
  return open.length === 0 ? pages : open
}
