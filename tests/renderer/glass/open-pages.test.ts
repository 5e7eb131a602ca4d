import { describe, expect, it } from 'vitest'
import { testWords } from '#core/glass/words/tests'
import { manyAre, notKnown, oneIs, openPages } from '#renderer/screens/glass/kitchen/test-answers.ts'

const plate = { rinseAtLeast: null, pressure: null }
const { pages } = testWords('measured', plate)
const gauges = testWords('gauges', plate).pages

const choicesOf = (test: 'round' | 'close-look', findings: Parameters<typeof openPages>[1]) =>
  openPages(testWords(test, plate).pages, findings).flatMap((page) =>
    page.kind === 'pick-many' ? page.choices.map((choice) => choice.is) : [],
  )
const say = (evidence: 'towelled' | 'iridescent' | 'rim-marks', answer: 'yes' | 'no') =>
  ({ evidence, answer, from: 'operator' }) as const

describe('what a test still has to ask', () => {
  it('leaves out what a visit has measured, and asks all when nothing is known', () => {
    expect(openPages(pages, [])).toEqual(pages)
    const known = openPages(pages, [{ evidence: 'ra-dose-ok', answer: 'yes', from: 'record' }])
    expect(known).toEqual([pages[1]])
    const heat = openPages(gauges, [{ evidence: 'rinse-cool', answer: 'no', from: 'record' }])
    expect(heat[0]?.kind === 'pick-many' && heat[0].choices.map((choice) => choice.is)).toEqual([
      'pressure-bad',
    ])
  })

  it('asks again what only the operator answered', () => {
    expect(openPages(pages, [{ evidence: 'ra-dose-ok', answer: 'yes', from: 'operator' }])).toEqual(pages)
  })

  it('does not ask again in a list what staff have seen, nor what they said before the tests', () => {
    expect(choicesOf('round', [])).toContain('towelled')
    expect(choicesOf('round', [say('towelled', 'no')])).not.toContain('towelled')
    // a glance may miss what a close look finds
    const close = choicesOf('close-look', [say('iridescent', 'yes'), say('rim-marks', 'no')])
    expect(close).not.toContain('iridescent')
    expect(close).toContain('rim-marks')
  })

  it('never turns a skip into a no', () => {
    expect(notKnown(pages).every((answer) => answer.answer === 'unknown')).toBe(true)
    const [page] = testWords('round', plate).pages
    if (page === undefined) throw new Error('no page')
    expect(
      manyAre(page, ['towelled'], false)
        .map((answer) => answer.answer)
        .toSorted(),
    ).toEqual(['unknown', 'unknown', 'unknown', 'unknown', 'yes'])
    expect(manyAre(page, [], true).every((answer) => answer.answer === 'no')).toBe(true)
    const [dose] = pages
    expect(dose === undefined ? [] : oneIs(dose, null).map((answer) => answer.answer)).toEqual([
      'no',
      'no',
      'no',
    ])
  })
})
