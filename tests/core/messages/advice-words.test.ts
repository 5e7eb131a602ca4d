import { describe, expect, it } from 'vitest'
import { adviceSentences } from '#core/messages/advice-words'
import { doseFindingSentence } from '#core/messages/dose-words'
import type { TurnAdvice } from '#core/screw/types'
import { estimate } from '#core/statistics/make-estimate'

function flow(value: number) {
  const made = estimate(value, 'mL/min', [{ source: 'flow', standard: 0.15 }], { predicted: true })
  if (!made.ok) throw new Error('no estimate')
  return made.value
}

const turn: Extract<TurnAdvice, { kind: 'turn' }> = {
  kind: 'turn',
  eighths: -2,
  backOffEighths: 2,
  isTestMove: false,
  learnedFrom: 'earlier-visits',
  expectedFlow: flow(5.1),
  gain: flow(2.1),
  remainingEighths: 0,
}

describe('an advice in words', () => {
  it('says a turn as the hand makes it, what to expect after it, and where that is known from', () => {
    expect(adviceSentences(turn, 'comma')).toEqual([
      'Turn the screw anticlockwise ½ turn, then clockwise ¼ turn. That leaves it ¼ turn down, with the slack taken up.',
      'Expect 5,10 ± 0,29 mL/min after it.',
      'Learned at earlier visits: one turn does 2,10 ± 0,29 mL/min.',
    ])
  })

  it('promises nothing of a test move', () => {
    const test = adviceSentences(
      { ...turn, isTestMove: true, learnedFrom: 'nothing-yet', gain: null },
      'point',
    )
    expect(test.join(' ')).toMatch(/test move.*Nothing is known of this screw yet\.$/u)
    expect(test.join(' ')).not.toContain('Expect')
  })

  it('gives a sentence, never a code, for every reason not to turn', () => {
    const said = adviceSentences(
      { kind: 'refuse', reasons: ['not-primed', 'caution-not-acknowledged'] },
      'point',
    )
    expect(said).toEqual([
      'Prime the line and mark it as primed.',
      'Read the cautions for this product first.',
    ])
    expect(adviceSentences({ kind: 'leave', reason: 'not-worth-a-move', moreRuns: 2 }, 'point')[1]).toBe(
      '2 more runs would prove it without a turn.',
    )
  })

  it('asks before it calls a screw dead, and says which move would tell', () => {
    const asked = adviceSentences(
      { kind: 'confirm', finding: 'screw-does-not-act', probability: 0.7, eighths: 8 },
      'point',
    )
    expect(asked[0]).toMatch(/^The screw does not act\? /u)
    expect(asked[1]).toBe('Turn the screw clockwise 1 turn. That would tell.')
    const named = adviceSentences(
      { kind: 'diagnose', finding: 'screw-does-not-act', probability: 0.97 },
      'point',
    )
    expect(named).toHaveLength(1)
    expect(named[0]).toMatch(/Do not keep turning\.$/u)
  })
})

describe('an odd dosing time in words', () => {
  it('names both times and what to do instead', () => {
    const said = doseFindingSentence({ code: 'longer-than-rinse', seconds: 12, rinseSeconds: 10.5 }, 'comma')
    expect(said).toContain('runs 12,0 s a rack, the rinse only 10,5 s')
    expect(said).toMatch(/Shorten/u)
    expect(doseFindingSentence({ code: 'too-short', seconds: 0.3, need: 0.5 }, 'point')).toContain(
      'longer time',
    )
  })
})
