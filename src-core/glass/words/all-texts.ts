import { CAUSE_IDS } from '../causes'
import { EVIDENCE_IDS } from '../evidence'
import { LASTS_DAYS, type KnownFact } from '../known-types'
import { causeWords } from './cause-words'
import type { CauseWords } from './causes'
import { EVIDENCE_WORDS } from './evidence'
import { NOTICED_WORDS, PICTURE_WORDS, SINCE_WORDS, SPREAD_WORDS, WARE_WORDS } from './pictures'
import { SCREEN_WORDS } from './screen'
import { fillSentence, knownSentence, progressSentence, stockSentence } from './sentences'
import { TESTS } from '../tests'
import { testWords, type TestPage } from './tests'

/** Everything kitchen staff can read in the glass check, block by block, for the test of its reading grade. */
export function operatorTexts(): readonly { readonly name: string; readonly sentences: readonly string[] }[] {
  return [
    ...CAUSE_IDS.map((id) => ({ name: `cause ${id}`, sentences: causeTexts(causeWords(id, 'fitted')) })),
    { name: 'cause hard-rinse, no softener', sentences: causeTexts(causeWords('hard-rinse', 'none')) },
    ...TESTS.map(({ id }) => {
      const words = testWords(id, { rinseAtLeast: null, pressure: null })
      return {
        name: `test ${id}`,
        sentences: [
          words.title,
          words.need,
          ...words.steps,
          ...words.care,
          ...words.pages.flatMap((page) => pageTexts(page)),
        ],
      }
    }),
    { name: 'evidence', sentences: Object.values(EVIDENCE_WORDS).flatMap(({ yes, no }) => [yes, no]) },
    {
      name: 'first pages',
      sentences: [
        ...Object.values(PICTURE_WORDS).flatMap(({ name, hint }) => [name, hint]),
        ...Object.values(NOTICED_WORDS),
        ...Object.values(WARE_WORDS),
        ...Object.values(SPREAD_WORDS),
        ...Object.values(SINCE_WORDS),
      ],
    },
    { name: 'screen', sentences: Object.values(SCREEN_WORDS).flatMap(wordsIn) },
    { name: 'put together', sentences: putTogether() },
  ]
}

const causeTexts = (words: CauseWords): readonly string[] => [
  words.title,
  words.why,
  ...words.operator,
  ...words.rep,
  ...words.technician,
  ...words.never,
  words.expect,
  words.next.text,
]

const wordsIn = (words: string | readonly string[] | Readonly<Record<string, string>>): readonly string[] =>
  typeof words === 'string' ? [words] : Object.values(words)

const fact = (kind: KnownFact['kind'], findings: KnownFact['findings'], value: number): KnownFact => ({
  kind,
  value,
  findings,
  on: '2026-03-09',
  daysOld: 400,
  trusted: false,
})

/** Every sentence that is made of a table and a fact: what the record knows, in each of its states, and how far one is. */
function putTogether(): readonly string[] {
  const kinds = Object.keys(LASTS_DAYS) as readonly KnownFact['kind'][]
  const states = [
    ...EVIDENCE_IDS.flatMap((evidence) =>
      kinds.map((kind) => fact(kind, [{ evidence, answer: 'yes', from: 'record' }], 1)),
    ),
    ...kinds.flatMap((kind) => [fact(kind, [], 0.9), fact(kind, [], 1.1)]),
  ]
  return [
    ...new Set(states.flatMap((one) => [knownSentence(one, '9 Mar'), knownSentence(one, null)])),
    stockSentence('9 Mar', true),
    stockSentence('9 Mar', false),
    fillSentence('90'),
    ...(['question', 'test'] as const).map((kind) => progressSentence(kind, 1, 3)),
    ...TESTS.map(({ id }) => `It takes ${testWords(id, { rinseAtLeast: null, pressure: null }).effort}.`),
  ]
}

const pageTexts = (page: TestPage): readonly string[] => [
  page.question,
  ...(page.kind === 'pick-one' ? page.answers : page.choices).map((choice) => choice.label),
]
