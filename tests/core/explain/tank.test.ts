import { describe, expect, it } from 'vitest'
import { explainTank, type TankExplained } from '#core/explain/tank'
import { estimate } from '#core/statistics/make-estimate'
import { machine, product, pump } from '#tests/core/sanitize/records'
import { arithmetic } from '#tests/support/arithmetic'
import { good } from '#tests/support/outcomes'

const input: TankExplained = {
  machine: machine({
    rinse: { kind: 'measured', perRack: { value: '3.0', unit: 'L' }, spread: '2' },
    wash: {
      kind: 'tank',
      volume: { value: '40', unit: 'L' },
      drainAndFillsPerDay: '1',
      closure: 'continuous',
      carriedOut: { value: '0.15', unit: 'L' },
      upstream: null,
      feeding: 'with-rinse',
    },
  }),
  pump: pump('p1', 'soap', {
    feeds: 'wash-tank',
    window: { basis: 'g-per-L-tank', low: '1.8', target: '2.0', high: '2.2' },
  }),
  product: product('soap', { density: { value: '1.2', unit: 'g/mL' } }),
  tested: {
    flow: estimate(120, 'mL/min', [{ source: 'replicates', standard: 1 }]),
    dose: estimate(5, 'mL/rack', [{ source: 'flow', standard: 0.05 }]),
  },
}

describe('the working of a wash tank', () => {
  it.each(['settlesAt', 'recharge', 'initialCharge', 'racksBeforeTest'] as const)(
    'shows %s as a sum anyone can redo: the numbers put in give the result',
    (part) => {
      const working = good(explainTank(input)[part])
      const redone = arithmetic(working.substituted)
      const shown = part === 'racksBeforeTest' ? Math.ceil(redone) : redone
      expect(shown / working.result.value).toBeCloseTo(1, 4)
      expect(working.source).not.toBe('')
    },
  )

  it('says what is assumed: that soil takes nothing, and what happens with water carried out', () => {
    const { assumptions } = good(explainTank(input).settlesAt)
    expect(assumptions.join(' ')).toMatch(/soil uses nothing up/)
    const unknown = {
      ...input,
      machine: {
        ...input.machine,
        wash: {
          kind: 'tank' as const,
          volume: { value: '40', unit: 'L' as const },
          drainAndFillsPerDay: '1',
          closure: 'continuous' as const,
          carriedOut: null,
          upstream: null,
          feeding: 'with-rinse' as const,
        },
      },
    }
    expect(good(explainTank(unknown).settlesAt).assumptions.join(' ')).toMatch(/not recorded/)
  })

  it('has none for a pump that feeds the rinse, and names what an untested pump lacks', () => {
    const rinse = explainTank({ ...input, pump: { ...input.pump, feeds: 'final-rinse' } })
    expect(rinse.settlesAt).toMatchObject({ ok: false, problem: { reason: 'not-predicted' } })
    expect(explainTank({ ...input, tested: null }).recharge).toMatchObject({
      ok: false,
      problem: { code: 'no-runs' },
    })
  })
})
