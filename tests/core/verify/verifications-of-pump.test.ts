import { describe, expect, it } from 'vitest'
import type { Reading, Verification } from '#core/records/index'
import { estimate } from '#core/statistics/make-estimate'
import { tankOfPump } from '#core/tank/tank-of-pump'
import { verificationsOfPump, type CheckedPump } from '#core/verify/verifications-of-pump'
import { machine, product, pump } from '../sanitize/records'

const around: CheckedPump = {
  machine: machine({
    rinse: { kind: 'measured', perRack: { value: '3.0', unit: 'L' }, spread: '2' },
    racksPerDay: '120',
    wash: {
      kind: 'tank',
      volume: { value: '40', unit: 'L' },
      drainAndFillsPerDay: '1',
      closure: 'continuous',
      carriedOut: null,
      upstream: null,
      feeding: 'with-rinse',
    },
  }),
  pump: pump('p1', 'soap', {
    role: 'detergent',
    feeds: 'wash-tank',
    doseSeconds: { value: '2.5', unit: 's' },
    window: { basis: 'g-per-L-tank', low: '1.8', target: '2.0', high: '2.2' },
  }),
  product: product('soap', { role: 'detergent', density: { value: '1.2', unit: 'g/mL' } }),
  instruments: [],
  water: {
    hardness: null,
    solids: null,
    conductivity: null,
    alkalinity: null,
    calcium: null,
    pH: null,
    temperature: null,
    softener: 'unknown',
  },
  tested: {
    flow: estimate(120, 'mL/min', [{ source: 'replicates', standard: 1.2, degreesOfFreedom: 2 }]),
    dose: estimate(5, 'mL/rack', [{ source: 'flow', standard: 0.05 }]),
    strengths: [],
  },
  before: null,
  readings: [],
}

const titration: Verification = {
  id: 'v1',
  at: '2026-03-31T10:00:00.000Z',
  method: 'alkalinity-titration',
  where: 'wash-tank',
  instrumentId: null,
  reading: '8',
  step: '0.1',
  factor: '0.2',
  blank: '0',
}

const counted = (racks: string, at: string, machineId = around.machine.id): Reading => ({
  id: `r-${racks}`,
  machineId,
  kind: 'racks-since-fill',
  at,
  value: null,
  count: racks,
})

describe('the checks of a pump that feeds a wash tank', () => {
  it('are held against what the tank settles at: 2 g/L from 5 mL of 1.2 g/mL into 3 L', () => {
    const [found] = verificationsOfPump([titration], around)
    expect(found?.predicted).toMatchObject({ ok: true, value: { unit: 'g/L-product' } })
    expect(found?.predicted.ok === true ? found.predicted.value.value : null).toBeCloseTo(2, 12)
  })

  it('take the last count of racks on that machine, and say when it was too early', () => {
    const readings = [
      counted('50', '2026-03-31T08:00:00.000Z'),
      counted('4', '2026-03-31T09:30:00.000Z'),
      counted('90', '2026-03-31T09:45:00.000Z', 'another machine'),
    ]
    const [found] = verificationsOfPump([titration], { ...around, readings })
    expect(found?.agreement).toMatchObject({ ok: true, value: { distrust: 'tank-not-settled' } })
  })

  it('say that the pump was not tested, and still show what was measured', () => {
    const [found] = verificationsOfPump([titration], { ...around, tested: null })
    expect(found?.predicted).toMatchObject({ ok: false, problem: { code: 'no-runs' } })
    expect(found?.measured).toMatchObject({ ok: true, value: { value: 1.6 } })
  })
})

describe('the wash of a pump', () => {
  it('is nothing for a pump that feeds the final rinse', () => {
    expect(tankOfPump({ ...around, pump: { ...around.pump, feeds: 'final-rinse' } })).toBeNull()
  })
})
