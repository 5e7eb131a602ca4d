import { describe, expect, it } from 'vitest'
import type { Machine, Pump } from '#core/records/index'
import { ok } from '#core/outcome'
import { estimate, exactly } from '#core/statistics/make-estimate'
import { tankStrength } from '#core/dose/concentration'
import { tankResult, type TankInput } from '#core/tank/tank-result'
import { machine, pump } from '#tests/core/sanitize/records'
import { good } from './support'

const door: Machine = machine({
  racksPerDay: '120',
  wash: {
    kind: 'tank',
    volume: { value: '40', unit: 'L' },
    drainAndFillsPerDay: '2',
    closure: 'continuous',
    carriedOut: { value: '0', unit: 'L' },
    upstream: null,
    feeding: 'with-rinse',
  },
})
const detergent: Pump = pump('p1', 'soap', {
  role: 'detergent',
  feeds: 'wash-tank',
  doseSeconds: { value: '2.0', unit: 's' },
  window: { basis: 'g-per-L-tank', low: '1.8', target: '2.0', high: '2.2' },
})
const input: TankInput = {
  machine: door,
  pump: detergent,
  flow: estimate(120, 'mL/min', [{ source: 'replicates', standard: 1.2, degreesOfFreedom: 2 }]),
  dose: estimate(4, 'mL/rack', [{ source: 'flow', standard: 0.04, degreesOfFreedom: 2 }]),
  density: exactly(1.2, 'g/mL'),
  rinse: estimate(3, 'L', [{ source: 'rinse-volume', standard: 0.06 }]),
}

describe('the wash a pump feeds', () => {
  it('settles at 1.60 g/L, needs 2.50 s and a 33.3 s charge, and waits 40 racks (worked by hand)', () => {
    const found = tankResult(input)
    expect(good(found.settlesAt).value).toBeCloseTo(1.6, 12)
    expect(good(found.recharge).value).toBeCloseTo(2.5, 12)
    expect(good(found.initialCharge).value).toBeCloseTo(33.333333, 5)
    expect(good(found.racksBeforeTest)).toBe(40)
    expect(good(found.service).firstBelow).toBe(10)
    expect(found.notes).toEqual([])
  })

  it('fed 6 g all at once swings between 1.926 and 2.076 g/L, around the 2.000 it would hold with the rinse', () => {
    // the slug row of tests/references/tank.json, worked by hand
    const wash = { ...door.wash, feeding: 'slug' } as Machine['wash']
    const six = { ...input, machine: { ...door, wash }, dose: exactly(5, 'mL/rack') }
    const found = tankResult(six)
    if (found.swing === null) throw new Error('no swing')
    expect(good(found.swing).peak).toBeCloseTo(2.0759, 4)
    expect(good(found.swing).trough).toBeCloseTo(1.9259, 4)
    expect(good(found.settlesAt).value).toBeCloseTo(2, 12)
    expect(tankResult({ ...six, machine: door }).swing).toBeNull()
    // two tanks, fed into the second: the same swing there, as the last rack of a service shows
    const two = {
      ...six,
      machine: {
        ...six.machine,
        wash: {
          ...wash,
          volume: { value: '60', unit: 'L' },
          upstream: { volume: { value: '40', unit: 'L' } },
        } as Machine['wash'],
      },
      pump: { ...detergent, feeds: 'upstream-tank' as const },
    }
    const last = good(tankResult(two).service).points.at(-1)
    expect(last?.strength).toBeCloseTo(2.0759, 2)
    expect((last?.strength ?? 0) - (last?.trough ?? 0)).toBeCloseTo(6 / 40, 9)
  })

  it('carries the doubt of flow and water into strength and seconds: 1 % and 2 % make 2.236 %', () => {
    const found = tankResult(input)
    // GUM 5.1.6: relative variances of a product add
    const relative = Math.hypot(0.01, 0.02)
    expect(good(found.settlesAt).standard / 1.6).toBeCloseTo(relative, 10)
    expect(good(found.recharge).standard / 2.5).toBeCloseTo(relative, 10)
    expect(good(found.initialCharge).standard / (100 / 3)).toBeCloseTo(0.01, 10)
  })

  it('cancels the density of a weighed run: grams per rack were weighed, not measured by volume', () => {
    const dose = good(
      estimate(5, 'mL/rack', [
        { source: 'scale', standard: 0.02 },
        { source: 'density', standard: 0.05, sign: -1 },
      ]),
    )
    const density = good(estimate(1.2, 'g/mL', [{ source: 'density', standard: 0.012 }]))
    const found = good(tankStrength(dose, density, good(exactly(3, 'L'))))
    expect(found.standard / found.value).toBeCloseTo(0.02 / 5, 10)
  })

  it('keeps the rest when one thing is missing', () => {
    const found = tankResult({ ...input, machine: { ...door, racksPerDay: null } })
    expect(found.service).toMatchObject({ ok: false, problem: { field: 'machine.racksPerDay' } })
    expect(found.settlesAt.ok).toBe(true)
    const noVolume = tankResult({
      ...input,
      machine: {
        ...door,
        wash: {
          kind: 'tank',
          volume: null,
          drainAndFillsPerDay: '1',
          closure: 'continuous',
          carriedOut: null,
          upstream: null,
          feeding: 'with-rinse',
        },
      },
    })
    expect(noVolume.model).toMatchObject({ ok: false, problem: { needed: 'tank-volume' } })
    // m/r needs no tank volume
    expect(good(noVolume.settlesAt).value).toBeCloseTo(1.6, 12)
  })

  it('does not read a strength off the draw-down under probe control, and shows the target held', () => {
    const found = tankResult({ ...input, pump: { ...detergent, control: 'probe' } })
    expect(found.settlesAt).toMatchObject({ ok: false, problem: { reason: 'probe-controlled' } })
    const day = good(found.service)
    expect(day.lowest).toBeCloseTo(2, 12)
    expect(day.highest).toBeCloseTo(2, 12)
    expect(found.notes).toEqual([{ code: 'probe-holds-it' }])
  })

  it('has no initial charge on a dump-and-refill machine, whose rinse is the next wash', () => {
    const dumping: Machine = {
      ...door,
      wash: { kind: 'dump-and-refill', heel: { value: '0.6', unit: 'L' }, fill: null },
    }
    const found = tankResult({ ...input, machine: dumping })
    expect(found.initialCharge).toMatchObject({ ok: false, problem: { reason: 'no-initial-charge' } })
    expect(good(found.settlesAt).value).toBeCloseTo(1.6, 12)
    expect(good(found.service).points[0]?.strength).toBe(0)
  })

  it('says when a recharge is too short to repeat, and what flow would mend it', () => {
    const fast = tankResult({
      ...input,
      flow: exactly(1200, 'mL/min'),
      pump: { ...detergent, rollers: { perMinute: '60', count: '2' } },
    })
    // 0.25 s at 120 pulses a minute is half a pulse; two pulses take 1 s, at a quarter of the flow
    expect(fast.notes).toEqual([
      { code: 'recharge-too-short', seconds: 0.25, pulses: 0.5, flowForLonger: 300 },
    ])
  })

  it('says when the pump cannot keep up with the racks', () => {
    const slow = tankResult({ ...input, flow: exactly(4, 'mL/min'), cycleSeconds: 60 })
    expect(slow.notes).toEqual([{ code: 'cannot-keep-up', seconds: 75, cycleSeconds: 60 }])
  })

  it('says that carry-out is not known, and that a small tank is replaced each rack', () => {
    const small = tankResult({
      ...input,
      machine: {
        ...door,
        wash: {
          kind: 'tank',
          volume: { value: '2', unit: 'L' },
          drainAndFillsPerDay: '1',
          closure: 'continuous',
          carriedOut: null,
          upstream: null,
          feeding: 'with-rinse',
        },
      },
    })
    expect(small.notes.map((note) => note.code)).toEqual(['tank-replaced-each-rack', 'carried-out-not-known'])
  })

  it('takes a window by volume through the density: 1667 ppm of 1.2 g/mL is 2 g/L', () => {
    const window = { basis: 'ppm-vv', low: '1500', target: '1666.6666666667', high: '1800' } as const
    const found = tankResult({ ...input, pump: { ...detergent, window } })
    expect(good(found.window).target).toBeCloseTo(2, 9)
    expect(good(found.recharge).value).toBeCloseTo(2.5, 8)
  })

  it('divides by no flow', () => {
    const found = tankResult({ ...input, flow: ok(good(exactly(0, 'mL/min'))) })
    expect(found.recharge).toMatchObject({ ok: false, problem: { reason: 'zero-flow' } })
  })
})
