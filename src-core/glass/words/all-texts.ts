import { CAUSE_IDS } from '../causes'
import { CAUSE_WORDS } from './causes'
import { EVIDENCE_WORDS } from './evidence'
import { NOTICED_WORDS, PICTURE_WORDS, SINCE_WORDS, SPREAD_WORDS, WARE_WORDS } from './pictures'
import { SCREEN_WORDS } from './screen'
import { TESTS } from '../tests'
import { testWords, type TestPage } from './tests'

/** Everything kitchen staff can read in the glass check, block by block, for the test of its reading grade. */
export function operatorTexts(): readonly { readonly name: string; readonly sentences: readonly string[] }[] {
  return [
    ...CAUSE_IDS.map((id) => {
      const words = CAUSE_WORDS[id]
      return {
        name: `cause ${id}`,
        sentences: [
          words.title,
          words.why,
          ...words.operator,
          ...words.rep,
          ...words.technician,
          ...words.never,
          words.expect,
        ],
      }
    }),
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
    { name: 'screen', sentences: Object.values(SCREEN_WORDS).flat() },
  ]
}

const pageTexts = (page: TestPage): readonly string[] => [
  page.question,
  ...(page.kind === 'pick-one' ? page.answers : page.choices).map((choice) => choice.label),
]
