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

/** The name under which a check keeps that a test was asked, answered or not. */
export const askedName = (test: TestId): string => `${ASKED}${test}`

/** Tests this check asked, in order. */
export const testsAsked = (check: GlassCheck): readonly TestId[] => [
  ...new Set(
    check.answers.flatMap(({ evidence }) => {
      const test = evidence.startsWith(ASKED) ? evidence.slice(ASKED.length) : ''
      return TESTS.flatMap(({ id }) => (id === test ? [id] : []))
    }),
  ),
]
