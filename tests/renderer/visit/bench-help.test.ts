import { describe, expect, it } from 'vitest'
import { unmarkedCup, usualScale } from '#renderer/commands/library/instruments.ts'
import { factsMissing } from '#renderer/screens/visit/bench/facts-missing.ts'
import { pumpAdvice } from '#renderer/screens/visit/close/pump-advice.ts'
import { exactly } from '#core/statistics/make-estimate'
import type { PumpVisit, TestResult } from '#core/worksheet/types'
import { machine, product, pump } from '../../support/make-site'

describe('what the bench asks a first visit for', () => {
  it('is only what the basis of the window needs, in the order it is found out', () => {
    const bare = pump({ doseSeconds: null, window: null })
    expect(factsMissing(bare, machine({ rinse: null }), null)).toEqual([
      'product',
      'seconds per rack',
      'target',
    ])
    const byVolume = pump({ window: { basis: 'mL-per-rack', low: '1', target: '2', high: '3' } })
    expect(factsMissing(byVolume, machine({ rinse: null }), product({ density: null }))).toEqual([])
    const inTank = pump({ window: { basis: 'g-per-L-tank', low: '1', target: '2', high: '3' } })
    expect(factsMissing(inTank, machine({ rinse: null }), product({ density: null }))).toEqual([
      'rinse water',
      'density',
    ])
    const active = pump({ window: { basis: 'mg-per-L-active', low: '1', target: '2', high: '3' } })
    expect(factsMissing(active, machine(), product())).toContain('strength')
  })
})

describe('an instrument taken from the hand', () => {
  it('without a class is trusted to 5 % of what it holds, a scale to one step', () => {
    // 5 %: common practice for moulded cups, no source
    expect(unmarkedCup('a', 25)).toMatchObject({ tolerance: { value: '1.25', unit: 'mL' } })
    expect(usualScale('b', '0.1')).toMatchObject({
      kind: 'scale',
      graduation: { value: '0.1', unit: 'g' },
      tolerance: { value: '0.1', unit: 'g' },
    })
  })
})

const worked = (over: Partial<PumpVisit>): PumpVisit =>
  ({ pumpName: 'Pump', role: 'rinse-aid', advice: null, ...over }) as PumpVisit

const dosing = (active: number, role: PumpVisit['role'] = 'sanitizer') =>
  worked({ role, asLeft: { strengths: [exactly(active, 'mg/L-active')] } as unknown as TestResult })

describe('what is handed on of a pump', () => {
  it('is nothing while it is in its window or was not timed', () => {
    for (const state of ['proved-in', 'in-not-proved', 'not-tested'] as const)
      expect(pumpAdvice(worked({}), state, false, null)).toEqual([])
  })

  it('names the finding, and takes a machine with a weak sanitizer out of use', () => {
    const said = pumpAdvice(
      worked({
        role: 'sanitizer',
        advice: { kind: 'diagnose', finding: 'screw-does-not-act', probability: 0.99 },
      }),
      'proved-out',
      false,
      null,
    )
    expect(said.map((row) => row.to)).toEqual(['operator', 'rep'])
    expect(said[0]?.text).toMatch(/out of use until a strip confirms/u)
    expect(said[1]?.text).toMatch(/outside its window.*The screw does not act/u)
  })

  it('takes a machine out of use whose sanitizer is in a window that is wider than its label', () => {
    const label = { basis: 'mg-per-L-active', low: '50', high: '100' } as const
    for (const active of [45, 110])
      expect(pumpAdvice(dosing(active), 'proved-in', false, label).map((row) => row.to)).toEqual([
        'operator',
        'rep',
      ])
    expect(pumpAdvice(dosing(60), 'proved-in', false, label)).toEqual([])
    expect(pumpAdvice(dosing(45), 'proved-in', false, null)).toEqual([])
    expect(pumpAdvice(dosing(45, 'detergent'), 'proved-in', false, label)).toEqual([])
  })

  it('asks for another test after a change that nobody timed', () => {
    expect(pumpAdvice(worked({}), 'not-tested', true, null)[0]?.text).toMatch(/changed and not timed/u)
  })
})
