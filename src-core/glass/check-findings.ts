import type { GlassCheck } from '../records'
import { isCause, type CauseId } from './causes'
import { isEvidence } from './evidence'
import type { Finding } from './findings'
import { isPicture, PICTURES } from './pictures'
import { TESTS, type TestId } from './tests'

const say = (evidence: Finding['evidence'], answer: Finding['answer']): Finding => ({
  evidence,
  answer,
  from: 'operator',
})

/**
 * What an operator's check says: the pictures picked, the spread, the other ware, since when, and the answers to the
 * tests. What the record does not know by name is left out.
 */
export function findingsOfCheck(check: GlassCheck): readonly Finding[] {
  const other = check.ware.some((ware) => ware !== 'glass')
  return [
    ...check.answers.flatMap(({ evidence, answer }) => (isEvidence(evidence) ? [say(evidence, answer)] : [])),
    ...check.seen.filter(isPicture).map((picture) => say(PICTURES[picture], 'yes')),
    ...(check.spread === 'unknown' ? [] : [say('one-zone', check.spread === 'one-zone' ? 'yes' : 'no')]),
    ...(check.ware.length === 0 ? [] : [say('other-ware-too', other ? 'yes' : 'no')]),
    ...(check.since === 'unknown' ? [] : [say('began-suddenly', check.since === 'new' ? 'yes' : 'no')]),
  ]
}

const TRIED = 'tried:'
const ASKED = 'asked:'

/** The name under which a check keeps how a cure went: "yes" helped, "no" did not. */
export const triedName = (cause: CauseId): string => `${TRIED}${cause}`

/** Cures that were tried, and whether each helped. */
export const curesTried = (
  check: GlassCheck,
): readonly { readonly cause: CauseId; readonly helped: boolean }[] =>
  check.answers.flatMap(({ evidence, answer }) => {
    const cause = evidence.startsWith(TRIED) ? evidence.slice(TRIED.length) : ''
    return isCause(cause) && answer !== 'unknown' ? [{ cause, helped: answer === 'yes' }] : []
  })

/** The questions before the tests, in order. */
export const FIRST_PAGES = ['machine', 'pictures', 'ware', 'where', 'since', 'notice'] as const
export type FirstPage = (typeof FIRST_PAGES)[number]

/** The name under which a check keeps that a page or a test was asked, answered or not; it follows its answers. */
export const askedName = (asked: TestId | FirstPage): string => `${ASKED}${asked}`

export const isAskedName = (evidence: string): boolean => evidence.startsWith(ASKED)

const isOneOf = (check: GlassCheck, name: string): boolean =>
  check.answers.some(({ evidence }) => evidence === name)

/** Tests this check asked. */
export const testsAsked = (check: GlassCheck): readonly TestId[] =>
  TESTS.flatMap(({ id }) => (isOneOf(check, askedName(id)) ? [id] : []))

/** First pages this check asked. */
export const pagesAsked = (check: GlassCheck): readonly FirstPage[] =>
  FIRST_PAGES.filter((page) => isOneOf(check, askedName(page)))
