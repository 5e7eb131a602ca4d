import { fleschKincaid } from 'flesch-kincaid'
import { syllable } from 'syllable'
import { describe, expect, it } from 'vitest'
import { CAUSE_IDS } from '#core/glass/causes'
import { EVIDENCE_IDS } from '#core/glass/evidence'
import { glassModel } from '#core/glass/model'
import { nextTests } from '#core/glass/next-test'
import { rankCauses } from '#core/glass/rank'
import { operatorTexts } from '#core/glass/words/all-texts'
import { CAUSE_WORDS } from '#core/glass/words/causes'
import { nextReason, reasonSentence, verdictSentence } from '#core/glass/words/sentences'

/**
 * Flesch-Kincaid grade level (J. P. Kincaid and others, 1975): 0.39 words per sentence + 11.8 syllables per word
 * - 15.59, by the library flesch-kincaid; syllables counted by the library syllable.
 */
const HIGHEST_GRADE = 8
/** what one sentence may reach: the measure jumps by a grade with a single long word in a short sentence */
const HIGHEST_OF_ONE = 6.5

const wordsOf = (text: string): readonly string[] => text.match(/[A-Za-z][A-Za-z'’]*/gu) ?? []

/** Whole sentences only: labels of two or three words would flatter the grade. */
const sentencesOf = (texts: readonly string[]): readonly string[] =>
  texts
    .flatMap((text) => text.split(/(?<=[.?!:])\s+/u))
    .filter((part) => /[.?!:]\)?$/u.test(part) && wordsOf(part).length > 3)

function grade(texts: readonly string[]): number {
  const sentences = sentencesOf(texts)
  const words = sentences.flatMap((part) => wordsOf(part))
  return fleschKincaid({
    sentence: sentences.length,
    word: words.length,
    syllable: words.reduce((sum, word) => sum + syllable(word), 0),
  })
}

describe('reading grade of what kitchen staff read', () => {
  it('the measure itself: a plain sentence is low, a bureaucratic one far above', () => {
    expect(grade(['The cat sat on the mat.'])).toBeLessThan(2)
    expect(
      grade(['Insufficient surfactant concentration necessitates recalibration of peristaltic equipment.']),
    ).toBeGreaterThan(20)
  })

  it.each(
    operatorTexts()
      .map(({ name, sentences }) => [name, sentences] as const)
      .filter(([, sentences]) => sentencesOf(sentences).length > 2),
  )('%s is at grade 8 or lower', (_name, sentences) => {
    expect(grade(sentences)).toBeLessThanOrEqual(HIGHEST_GRADE)
  })

  it('no single sentence is above grade 6.5, among them what the record says and how far one is, and no label holds a word of five syllables', () => {
    const texts = operatorTexts().flatMap(({ sentences }) => sentences)
    expect(sentencesOf(texts).filter((text) => grade([text]) > HIGHEST_OF_ONE)).toEqual([])
    const labels = texts.filter((text) => sentencesOf([text]).length === 0)
    expect(labels.length).toBeGreaterThan(40)
    expect(labels.flatMap(wordsOf).filter((word) => syllable(word) > 4)).toEqual([])
  })

  it('all texts together are at grade 5 or lower', () => {
    const all = grade(operatorTexts().flatMap(({ sentences }) => sentences))
    console.log(`Flesch-Kincaid grade of all operator texts: ${all.toFixed(1)}`)
    expect(all).toBeLessThanOrEqual(5)
  })

  it('every sentence the program puts together is at grade 8 or lower, by kind', () => {
    const model = glassModel([])
    const rankings = [
      rankCauses([], model),
      ...EVIDENCE_IDS.map((evidence) => rankCauses([{ evidence, answer: 'yes', from: 'record' }], model)),
      ...EVIDENCE_IDS.map((evidence) => rankCauses([{ evidence, answer: 'no', from: 'operator' }], model)),
    ]
    const reasons = rankings.flatMap(({ causes }) => causes.flatMap((row) => row.reasons.map(reasonSentence)))
    const nexts = rankings.flatMap((ranking) => nextTests(ranking, [], model).map(nextReason))
    expect(grade([...new Set(reasons)])).toBeLessThanOrEqual(HIGHEST_GRADE)
    expect(grade([...new Set(nexts)])).toBeLessThanOrEqual(HIGHEST_GRADE)
    expect(grade(rankings.map(verdictSentence))).toBeLessThanOrEqual(HIGHEST_GRADE)
  })
})

const WARNING = /\b(?:do not|never|keep .* (?:away|out of)|without|are you|is there)\b/iu
const ORDERS: readonly RegExp[] = [
  /\b(?:open|remove|lift|unscrew|take)\b.*\b(?:panel|cover|lid|casing|hatch)/iu,
  /\b(?:mix|blend|combine)\b|\badd\b.*\b(?:to|into)\b.*\b(?:vinegar|acid|bleach|product|detergent|rinse aid)/iu,
  /\b(?:raise|lower|increase|reduce|change|set|adjust|turn)\b.*\b(?:heat|temperature|pressure|thermostat|valve|heater|booster|pump|screw)\b/iu,
  /\b(?:pour|put|add|fill|run|use)\b.*\b(?:vinegar|acid|delimer|descaler)\b.*\b(?:machine|tank|jets|wash)\b/iu,
  /\b(?:run|cycle)\b.*\b(?:vinegar|acid)\b/iu,
]
const isDangerous = (text: string): boolean => !WARNING.test(text) && ORDERS.some((order) => order.test(text))

describe('what kitchen staff are never told to do', () => {
  const told = CAUSE_IDS.flatMap((id) => CAUSE_WORDS[id].operator)
  const steps = operatorTexts()
    .filter(({ name }) => name.startsWith('test'))
    .flatMap(({ sentences }) => sentences)

  it('no cure opens a panel, mixes products, touches a setting, heat or pressure, or puts acid in a machine', () => {
    const danger =
      /\b(panel|screw|valve|thermostat|heater|wire|setting|dose|dilute|mix|vinegar|acid|bleach|raise|lower|turn up|turn down|set the)\b/iu
    expect(told.filter((text) => danger.test(text))).toEqual([])
  })

  it('no text at all that kitchen staff read tells them to: what could hurt stands only as a warning or a sign', () => {
    const ours = CAUSE_IDS.flatMap((id) => {
      const { title, why, operator, never, expect: after } = CAUSE_WORDS[id]
      return [title, why, ...operator, ...never, after]
    })
    const others = operatorTexts()
      .filter(({ name }) => !name.startsWith('cause'))
      .flatMap(({ sentences }) => sentences)
    const all = [...ours, ...others].flatMap((text) => text.split(/(?<=[.?!])\s+/u))
    expect(all.length).toBeGreaterThan(250)
    expect(all.filter((text) => isDangerous(text))).toEqual([])
  })

  it('the rule itself: an order to do it is caught, a warning is not', () => {
    for (const order of [
      'Open the panel.',
      'Take the cover off and look inside.',
      'Mix the two products.',
      'Add bleach to the vinegar.',
      'Raise the rinse heat.',
      'Turn the pressure down.',
      'Pour vinegar into the machine.',
      'Run a cycle with acid in the tank.',
      'Turn the screw.',
    ])
      expect(isDangerous(order)).toBe(true)
    for (const warning of [
      'Do not open panels.',
      'Keep vinegar out of the machine.',
      'Rub the mark with vinegar.',
    ])
      expect(isDangerous(warning)).toBe(false)
  })

  it('vinegar is named only with a loose glass at the sink, or to forbid it', () => {
    const named = [...told, ...steps].filter((text) => /vinegar/iu.test(text))
    expect(named.length).toBeGreaterThan(2)
    for (const text of named) expect(text).toMatch(/cloth|rub|wipe|bleach|keep vinegar out|loose/iu)
  })

  it('no text names a temperature: the data plate does', () => {
    const all = operatorTexts().flatMap(({ sentences }) => sentences)
    expect(all.filter((text) => /\d+ ?°|degrees?\b|\d+ ?(?:psi|kPa|bar)\b/iu.test(text))).toEqual([])
  })

  it('every cause says what to do, by whom, and what to expect', () => {
    for (const id of CAUSE_IDS) {
      expect(CAUSE_WORDS[id].operator.length).toBeGreaterThan(0)
      expect(CAUSE_WORDS[id].expect).toMatch(/\.$/u)
    }
  })

  it('every cause ends in one next thing, done by somebody the page says something of', () => {
    for (const id of CAUSE_IDS) {
      const { next, operator, rep, technician } = CAUSE_WORDS[id]
      expect(next.text).toMatch(/\.$/u)
      expect({ kitchen: operator, rep, technician }[next.who].length).toBeGreaterThan(0)
    }
  })

  it('acid and chlorine are kept apart wherever a product is poured or scale is taken off; hot water is let cool', () => {
    for (const id of ['rinse-aid-low', 'detergent-low', 'hard-rinse'] as const)
      expect(CAUSE_WORDS[id].never.join(' ')).toMatch(/acid.*chlorine.*gas/iu)
    for (const id of ['tank-dirty', 'rinse-flow-poor', 'carryover'] as const)
      expect(CAUSE_WORDS[id].operator.join(' ')).toMatch(/Switch the machine off and let/u)
    expect(CAUSE_WORDS['rinse-temp-low'].never.join(' ')).toMatch(/hot enough to burn/u)
  })
})
