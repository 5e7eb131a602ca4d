import type { EvidenceId } from '#core/glass/evidence'
import type { Finding } from '#core/glass/findings'
import { isNoticed } from '#core/glass/signs'
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

/**
 * The pages and choices not answered yet; all of them should everything have been. The record closes what it tells; of
 * a list, what staff have seen is not asked again, nor what they were asked before the tests in the same words.
 */
export function openPages(pages: readonly TestPage[], findings: readonly Finding[]): readonly TestPage[] {
  const known = new Map(
    findings.filter((finding) => finding.from === 'record').map((one) => [one.evidence, one.answer]),
  )
  const told = new Set(
    findings
      .filter(({ evidence, answer }) => answer === 'yes' || (answer === 'no' && isNoticed(evidence)))
      .map((one) => one.evidence),
  )
  const open = pages.flatMap((page): readonly TestPage[] => {
    if (page.kind === 'pick-many') {
      const choices = page.choices.filter((choice) => !known.has(choice.is) && !told.has(choice.is))
      return choices.length === 0 ? [] : [{ ...page, choices }]
    }
    const isTold =
      page.items.every((item) => known.has(item)) || page.items.some((item) => known.get(item) === 'yes')
    return isTold ? [] : [page]
  })
  return open.length === 0 ? pages : open
}
