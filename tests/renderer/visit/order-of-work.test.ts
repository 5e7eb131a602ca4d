import { describe, expect, it } from 'vitest'
import type { PumpState } from '#core/worksheet/types'
import type { TurnAdvice } from '#core/screw/types'
import { nextStep, type PumpAtWork } from '#renderer/screens/visit/desk/order-of-work.ts'

const turn: TurnAdvice = {
  kind: 'turn',
  eighths: 2,
  backOffEighths: 0,
  isTestMove: false,
  learnedFrom: 'nothing-yet',
  expectedFlow: null,
  gain: null,
  remainingEighths: 0,
}
const refuse: TurnAdvice = { kind: 'refuse', reasons: ['not-tested'] }
const leave: TurnAdvice = { kind: 'leave', reason: 'proved-in' }

const pump = (
  name: string,
  state: PumpState,
  advice: TurnAdvice,
  facts: Partial<Omit<PumpAtWork, 'pump'>> = {},
): PumpAtWork => ({
  pump: { pumpId: name, pumpName: name, state, advice },
  primed: true,
  priming: false,
  changed: false,
  ...facts,
})

describe('the fastest thing to do next', () => {
  it('is to answer the conditions that bear on the dose, before anything else', () => {
    expect(nextStep(6, [pump('Aid', 'proved-out', turn)], null)).toEqual({
      text: 'Answer 6 conditions that bear on the dose.',
      place: 'conditions',
    })
  })

  it('is to let one pump prime while the other is timed', () => {
    const pumps = [
      pump('Aid', 'not-tested', refuse),
      pump('Detergent', 'not-tested', refuse, { primed: false }),
    ]
    expect(nextStep(0, pumps, null).text).toBe('Start priming Detergent, and time Aid meanwhile.')
    expect(
      nextStep(
        0,
        [pump('Aid', 'not-tested', refuse), { ...pump('Detergent', 'not-tested', refuse), priming: true }],
        null,
      ).place,
    ).toBe('Aid')
  })

  it('is not to time a pump again whose screw is left alone and whom no further run would prove', () => {
    const settled: TurnAdvice = { kind: 'leave', reason: 'not-worth-a-move' }
    const aid = pump('Aid', 'in-not-proved', settled)
    expect(nextStep(0, [aid, pump('Detergent', 'not-tested', refuse)], null).text).toBe('Time Detergent.')
    expect(nextStep(0, [aid], null).place).toBe('close')
    expect(nextStep(0, [pump('Aid', 'in-not-proved', { ...settled, moreRuns: 2 })], null).text).toBe(
      'Time Aid.',
    )
  })

  it('is to check the wash itself where a probe holds its strength, then to close', () => {
    const probed: TurnAdvice = { kind: 'refuse', reasons: ['held-by-probe'] }
    const pumps = [pump('Aid', 'proved-in', leave), pump('Detergent', 'cannot-tell', probed)]
    expect(nextStep(0, pumps, null)).toEqual({
      text: 'Detergent: check the strength of the wash; a probe holds it.',
      place: 'Detergent',
    })
    const checked = [pump('Detergent', 'cannot-tell', probed, { checked: true })]
    expect(nextStep(0, checked, null).place).toBe('close')
  })

  it('is to turn a screw as soon as the advice is there', () => {
    expect(
      nextStep(0, [pump('Aid', 'proved-out', turn), pump('Detergent', 'not-tested', refuse)], null),
    ).toEqual({
      text: 'Turn the screw of Aid.',
      place: 'Aid',
    })
  })

  it('is to time afresh what was turned: the advice from before the turn is spent', () => {
    expect(nextStep(0, [pump('Aid', 'proved-out', turn, { changed: true })], null).text).toBe(
      'Time Aid afresh.',
    )
  })

  it('is not to sit and wait for a pump that is being timed', () => {
    const pumps = [
      pump('Aid', 'not-tested', refuse),
      pump('Detergent', 'not-tested', refuse, { primed: false }),
    ]
    expect(nextStep(0, pumps, 'Aid')).toEqual({ text: 'Prime Detergent.', place: 'Detergent' })
  })

  it('is to close once every pump is proved in, or best left alone', () => {
    expect(nextStep(0, [pump('Aid', 'proved-in', leave)], null).place).toBe('close')
    expect(nextStep(0, [], null).place).toBe('close')
  })
})
