import * as fc from 'fast-check'
import { render } from 'svelte/server'
import { describe, expect, it } from 'vitest'
import type { Verdict } from '#core/dose/types'
import type { Estimate } from '#core/statistics/estimate'
import type { DoseRound, DoseStory } from '#renderer/pictures/dose-rounds.ts'
import BudgetBars from '#renderer/pictures/BudgetBars.svelte'
import { drawMove, polar } from '#renderer/pictures/dial-path.ts'
import { doseFinding } from '#renderer/pictures/dose-finding.ts'
import { axisOf, place } from '#renderer/pictures/dose-scale.ts'
import DosePicture from '#renderer/pictures/DosePicture.svelte'
import { moveSentence, strokesOf, turnSpoken, turnText } from '#core/messages/turn-words'
import MethodPicture from '#renderer/pictures/MethodPicture.svelte'
import TurnDial from '#renderer/pictures/TurnDial.svelte'

const estimate = (value: number, expanded: number): Estimate => ({
  unit: 'ppm-vv',
  value,
  standard: expanded / 2,
  coverage: 2,
  expanded,
  low: value - expanded,
  high: value + expanded,
  degreesOfFreedom: null,
  predicted: false,
  budget: [
    { source: 'replicates', standard: 1, degreesOfFreedom: 2, share: 0.62 },
    { source: 'cylinder-tolerance', standard: 1, degreesOfFreedom: null, share: 0.377 },
    { source: 'timer', standard: 1, degreesOfFreedom: null, share: 0.003 },
  ],
})

const round = (kind: DoseRound['kind'], label: string, value: number, verdict: Verdict): DoseRound => ({
  id: label,
  label,
  kind,
  verdict,
  estimate: estimate(value, 12),
})

const story: DoseStory = {
  window: { low: 200, target: 250, high: 300 },
  rounds: [round('as-found', 'As found', 412, 'proved-out'), round('now', 'Now', 251, 'proved-in')],
}

const size = fc.double({ min: 0.01, max: 1e5, noNaN: true })

describe('the dose picture', () => {
  it('never squeezes the window below a quarter of the width, however far off the dose is', () => {
    fc.assert(
      fc.property(size, size, fc.array(size, { minLength: 1, maxLength: 6 }), (low, span, values) => {
        const window = { low, target: low + span / 2, high: low + span }
        const axis = axisOf(
          window,
          values.map((value) => round('round', 'x', value, 'proved-out')),
        )
        expect(axis.low).toBeGreaterThanOrEqual(0)
        expect(axis.low).toBeLessThanOrEqual(low)
        expect(axis.high).toBeGreaterThanOrEqual(window.high)
        expect((window.high - window.low) / (axis.high - axis.low)).toBeGreaterThan(0.249)
      }),
    )
  })

  it('draws a dose on the side of the limit it is on, and says when it lies beyond the edge', () => {
    const axis = axisOf(story.window, story.rounds)
    const limit = place(axis, { value: 300, low: 300, high: 300 }, 0, 500).x
    expect(place(axis, estimate(306, 12), 0, 500).x).toBeGreaterThan(limit)
    expect(place(axis, estimate(294, 12), 0, 500).x).toBeLessThan(limit)
    expect(place(axis, estimate(2400, 12), 0, 500)).toMatchObject({ x: 500, beyond: 'high' })
    expect(place(axis, estimate(1, 0.5), 0, 500)).toMatchObject({ x: 0, beyond: 'low' })
  })

  it('says in words what it shows', () => {
    expect(doseFinding(story, 'point')).toBe(
      'Dose against its window of 200 to 300 ppm v/v product, target 250. As found 412 ± 12, out. Now 251 ± 12, in, proved.',
    )
    const html = render(DosePicture, { props: { story, sign: 'comma', width: 700 } }).body
    expect(html).toContain('role="img"')
    expect(html).toContain('412 ± 12')
    expect(html).not.toContain('style=')
  })
})

describe('the turn dial', () => {
  it('goes up in one clockwise stroke, and down past the place and up again clockwise', () => {
    expect(strokesOf(3, 0)).toEqual([{ way: 'clockwise', eighths: 3 }])
    // worked case, domain practice: want -1/4: anticlockwise 1/2, then clockwise 1/4, net -1/4
    expect(strokesOf(-2, 2)).toEqual([
      { way: 'anticlockwise', eighths: 4 },
      { way: 'clockwise', eighths: 2 },
    ])
    expect(moveSentence(-2, 2)).toBe(
      'Turn the screw anticlockwise ½ turn, then clockwise ¼ turn. That leaves it ¼ turn down, with the slack taken up.',
    )
  })

  it('ends every move where it was asked to, with the last stroke clockwise', () => {
    fc.assert(
      fc.property(fc.integer({ min: -24, max: 24 }), fc.integer({ min: 1, max: 4 }), (eighths, backOff) => {
        const strokes = strokesOf(eighths, backOff)
        const net = strokes.reduce((sum, s) => sum + (s.way === 'clockwise' ? s.eighths : -s.eighths), 0)
        expect(net).toBe(eighths)
        if (eighths !== 0) expect(strokes.at(-1)?.way).toBe('clockwise')
      }),
    )
  })

  it('draws clockwise to the right of the witness mark and anticlockwise to its left', () => {
    const up = drawMove(2, 0, 100, 0)[0]
    expect(up?.path.startsWith('M0 -100')).toBe(true)
    expect(up?.path.endsWith('L100 0')).toBe(true)
    expect(drawMove(-2, 2, 100, 0)[0]?.path.endsWith('L0 100')).toBe(true)
    expect(polar(1, 100, 0)).toEqual({ x: 70.71, y: -70.71 })
  })

  it('writes eighths as a person does, and says them to the ear', () => {
    expect([1, 2, 3, 4, 6, 7, 8, 11, -12].map(turnText)).toEqual([
      '⅛',
      '¼',
      '⅜',
      '½',
      '¾',
      '⅞',
      '1',
      '1⅜',
      '1½',
    ])
    expect([1, 3, 4, 8, 12].map(turnSpoken)).toEqual([
      'one eighth of a turn',
      'three eighths of a turn',
      'half a turn',
      '1 turn',
      '1 and a half turns',
    ])
    const html = render(TurnDial, { props: { eighths: -2, backOff: 2 } }).body
    expect(html).toContain('half a turn anticlockwise, then a quarter of a turn clockwise')
    expect(html).not.toContain('style=')
  })
})

describe('the other pictures', () => {
  it('show doubt with its largest part first, each part with its name and share', () => {
    const html = render(BudgetBars, { props: { budget: estimate(1, 1).budget, sign: 'point' } }).body
    const at = ['Scatter between runs', '62 %', 'Cylinder tolerance', '38 %', 'by hand', 'under 1 %'].map(
      (text) => html.indexOf(text),
    )
    expect(at.every((place) => place > 0)).toBe(true)
    expect(at).toEqual(at.toSorted((a, b) => a - b))
  })

  it('say beside each method’s drawing what its numbers stand for', () => {
    for (const method of ['draw-down', 'catch', 'weighed'] as const) {
      const html = render(MethodPicture, { props: { method } }).body
      expect(html.match(/<li/g)).toHaveLength(3)
      expect(html).not.toContain('style=')
    }
  })
})
