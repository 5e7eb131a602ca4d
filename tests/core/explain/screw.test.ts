import { describe, expect, it } from 'vitest'
import { explainTurn } from '#core/explain/screw'
import { adviseTurn } from '#core/screw/advise-turn'
import type { GainPrior, ScrewObservation, TurnAdvice } from '#core/screw/types'
import type { Estimate } from '#core/statistics/estimate'

const flow = (value: number): Estimate<'mL/min'> => ({
  unit: 'mL/min',
  value,
  standard: 0.3,
  coverage: 2,
  expanded: 0.6,
  low: value - 0.6,
  high: value + 0.6,
  degreesOfFreedom: null,
  predicted: false,
  budget: [],
})
const ground = (value: number) => ({ target: 24, low: 22.8, high: 25.2, flow: flow(value) })
const at = (eighths: number, value: number): ScrewObservation => ({
  eighths,
  flow: value,
  standard: 0.3,
  expanded: 0.6,
})
const recorded: GainPrior = { gain: 8, standard: 4, from: 'earlier-visits' }
const advise = (observations: readonly ScrewObservation[], prior: GainPrior | null = recorded): TurnAdvice =>
  adviseTurn({ target: 24, low: 22.8, high: 25.2, observations, prior, playTakenUp: true })

describe('the working of a turn', () => {
  // Derived worked example of tests/references/screw.ts: from 20.1 wants +0.39 turns and gets 3 eighths.
  it('puts the numbers into its formula, and they come out at the eighths advised', () => {
    const working = explainTurn(advise([at(0, 15), at(4, 20.1)]), ground(20.1))
    const [, gain, turns] = /\/ ([\d.]+) = ([\d.]+) turns/u.exec(working?.substituted ?? '') ?? []
    expect(working?.substituted).toMatch(/^\(24 − 20.1\)/u)
    expect((24 - 20.1) / Number(gain)).toBeCloseTo(Number(turns), 3)
    expect(Math.round(8 * Number(turns))).toBe(working?.result.value)
    expect(working?.assumptions.join(' ')).toContain('turns of this visit')
  })

  it('says that a first move is a test when nothing is known', () => {
    const working = explainTurn(advise([at(0, 20)], null), ground(20))
    expect(working?.assumptions.join(' ')).toContain('This move is a test')
    expect(working?.inputs.map((input) => input.symbol)).not.toContain('g')
  })

  it('writes a decimal comma where the reader does', () => {
    const working = explainTurn(advise([at(0, 15), at(4, 20.1)]), ground(20.1), 'comma')
    expect(working?.substituted).toContain('20,1')
    expect(working?.substituted).not.toMatch(/\d\.\d/u)
  })

  it('shows the guard band when the dose is proved in', () => {
    const working = explainTurn({ kind: 'leave', reason: 'proved-in' }, ground(23.6))
    expect(working?.substituted).toBe('22.8 ≤ 23 and 24.2 ≤ 25.2')
  })

  it('gives the odds of a screw that does not act, and none where a rule decided', () => {
    const dead = advise([at(0, 15), at(4, 15.2), at(8, 15.1)])
    expect(dead.kind).toBe('diagnose')
    expect(explainTurn(dead, ground(15.1))?.substituted).toMatch(/^P = (?:more than )?9\d(?:\.\d)? %/u)
    const rule = explainTurn({ kind: 'diagnose', finding: 'no-flow', probability: null }, ground(0))
    expect(rule?.substituted).toBe('judged by a rule, not by odds')
  })

  it('has nothing to show for a refusal', () => {
    expect(explainTurn({ kind: 'refuse', reasons: ['not-tested'] }, ground(20))).toBeNull()
  })
})
