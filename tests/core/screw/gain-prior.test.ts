import { describe, expect, it } from 'vitest'
import { gainPrior, type GainSegment } from '#core/screw/gain-prior'
import type { ScrewObservation } from '#core/screw/types'

const at = (eighths: number, flow: number): ScrewObservation => ({ eighths, flow, standard: 0.1, runs: 3 })
/** Tests on a straight screw of `gain` mL/min per turn without play. */
const visit = (gain: number, tubeChangedAfter = false): GainSegment => ({
  observations: [at(0, 15), at(4, 15 + gain / 2), at(8, 15 + gain)],
  tubeChangedAfter,
})
const untouched: GainSegment = { observations: [at(0, 15)], tubeChangedAfter: false }

describe('what is believed of the gain before a visit', () => {
  it('learns the gain of the pump itself from the turns of earlier visits', () => {
    const known = gainPrior([visit(8)])
    expect(known.from).toBe('earlier-visits')
    expect(known.gain).toBeGreaterThan(7.5)
    expect(known.gain).toBeLessThan(8.5)
    expect(known.standard).toBeLessThan(1)
  })

  it('knows it better after a second visit, and half as well after a tube change', () => {
    const once = gainPrior([visit(8)])
    expect(gainPrior([visit(8), visit(8)]).standard).toBeLessThan(once.standard)
    const changed = gainPrior([visit(8, true)])
    expect(changed.gain).toBe(once.gain)
    expect(changed.standard).toBeCloseTo(2 * once.standard, 12)
  })

  it('asks pumps of the same kind when its own screw was never turned', () => {
    const alone = gainPrior([untouched], [[visit(8)]])
    const many = gainPrior([], [[visit(8)], [visit(9)], [visit(8.5)], [untouched]])
    expect(alone.from).toBe('same-kind')
    expect(many.gain).toBeGreaterThan(7.5)
    expect(many.gain).toBeLessThan(9.5)
    expect(many.standard).toBeLessThan(alone.standard)
    expect(many.standard).toBeGreaterThanOrEqual(0.2 * many.gain)
  })

  it('admits to knowing nothing', () => {
    expect(gainPrior([])).toEqual({ gain: 0, standard: 0, from: 'none' })
    expect(gainPrior([untouched], [[untouched]])).toMatchObject({ from: 'none' })
  })
})
