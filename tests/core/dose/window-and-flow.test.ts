import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dosePerRack } from '#core/dose/concentration'
import { doseSeconds } from '#core/dose/dose-seconds'
import { doseFindings } from '#core/dose/dose-findings'
import { onBasis, strengthsOf } from '#core/dose/on-basis'
import { readWindow } from '#core/dose/read-window'
import { requiredDose } from '#core/dose/required-dose'
import { requiredFlow } from '#core/dose/required-flow'
import type { TargetWindow, WindowBasis } from '#core/records/index'
import { exactly } from '#core/statistics/make-estimate'
import { context, mLPerRack, pump, quat, rinse, trade } from '#tests/core/dose/records'
import { product } from '#tests/core/drawdown/records'
import { allFinite, codeOf, good } from '#tests/support/outcomes'

const window = (basis: WindowBasis, low: string, target: string, high: string): TargetWindow => ({
  basis,
  low,
  target,
  high,
})
const BASES = ['mL-per-rack', 'ppm-vv', 'mg-per-L-product', 'mg-per-L-active', 'g-per-L-tank'] as const

describe('a wash tank whose probe holds the strength', () => {
  const grams = window('g-per-L-tank', '1.44', '1.6', '1.76')
  const probed = { ...pump(), control: 'probe', feeds: 'wash-tank', window: grams } as const

  // overflow carries c_set x r away per rack, whatever the flow (mass balance of a stirred tank)
  it('asks for no flow and no seconds: the flow times the seconds does not say how strong it is', () => {
    expect(codeOf(doseSeconds(probed))).toBe('cannot-compute')
    expect(codeOf(requiredFlow(probed, context(3)))).toBe('cannot-compute')
  })

  it('is judged by the seconds when the dose is asked for per rack, and where no tank is fed', () => {
    const perRack = { ...probed, window: window('mL-per-rack', '1', '2', '3') }
    expect(good(doseSeconds(perRack)).value).toBeGreaterThan(0)
    expect(good(doseSeconds({ ...probed, feeds: 'final-rinse' })).value).toBeGreaterThan(0)
  })
})

describe('required flow', () => {
  it('250 ppm v/v in 3.0 L needs 0.7502 mL a rack (worked example)', () => {
    expect(good(requiredDose('ppm-vv', 250, context(3)))).toBeCloseTo(0.7502, 4)
  })

  it('50 mg/L chlorine from trade 10 % in 4.467 L needs 2.234 mL; quat 150 mg/L in 3.0 L needs 4.500', () => {
    expect(good(requiredDose('mg-per-L-active', 50, context('4.467', trade(10))))).toBeCloseTo(2.2335, 4)
    expect(good(requiredDose('mg-per-L-active', 150, context(3, quat(10), '1.0')))).toBeCloseTo(4.5, 9)
  })

  it('is the flow at which the dose comes out on each edge', () => {
    const edge = fc.integer({ min: 1, max: 150 })
    fc.assert(
      fc.property(fc.constantFrom(...BASES), edge, edge, edge, (basis, a, b, c) => {
        const [low = 0, target = 0, high = 0] = [a, b, c].toSorted((x, y) => x - y)
        const scale = basis === 'g-per-L-tank' ? 0.1 : 1
        const text = (n: number) => (n * scale).toFixed(1)
        const here = context('3.1', quat('7.5'), '1.05')
        const p = pump({ window: window(basis, text(low), text(target), text(high)) })
        const flow = good(requiredFlow(p, here))
        for (const [key, value] of [
          ['low', low],
          ['target', target],
          ['high', high],
        ] as const) {
          const dose = good(dosePerRack(good(exactly(flow[key], 'mL/min')), good(exactly(12, 's'))))
          expect(good(onBasis(basis, dose, here)).value / (value * scale)).toBeCloseTo(1, 12)
        }
      }),
    )
  })

  it('says what is missing', () => {
    expect(requiredFlow(pump(), context(3))).toMatchObject({ problem: { needed: 'window' } })
    const p = pump({ window: window('ppm-vv', '200', '250', '300'), doseSeconds: null })
    expect(requiredFlow(p, context(3))).toMatchObject({ problem: { needed: 'dose-seconds' } })
  })
})

describe('a target window', () => {
  it('runs from low over target to high', () => {
    expect(good(readWindow(window('ppm-vv', '200', '250', '300'), context(3)))).toEqual({
      basis: 'ppm-vv',
      low: 200,
      target: 250,
      high: 300,
    })
    expect(readWindow(window('ppm-vv', '260', '250', '300'), context(3))).toMatchObject({
      problem: { field: 'pump.window.low' },
    })
    expect(readWindow(window('ppm-vv', '200', '250', '240'), context(3))).toMatchObject({
      problem: { field: 'pump.window.high' },
    })
    expect(readWindow(window('ppm-vv', '0', '0', '1'), context(3))).toMatchObject({
      problem: { field: 'pump.window.target' },
    })
  })

  it('above 200 mg/L of chlorine is blocked, whatever basis it is written in (40 CFR 180.940(a), from memory)', () => {
    const chlorine = context('4.467', trade(10))
    expect(codeOf(readWindow(window('mg-per-L-active', '50', '100', '200'), chlorine))).toBe('ok')
    expect(readWindow(window('mg-per-L-active', '50', '100', '201'), chlorine)).toMatchObject({
      problem: { code: 'number-out-of-range', field: 'pump.window.high', high: 200, unit: 'mg/L-active' },
    })
    expect(readWindow(window('mL-per-rack', '2', '9', '9'), chlorine)).toMatchObject({
      problem: { code: 'number-out-of-range', field: 'pump.window.target', high: 8.93, unit: 'mL/rack' },
    })
    expect(codeOf(readWindow(window('mg-per-L-active', '150', '300', '400'), context(3, quat(10))))).toBe(
      'ok',
    )
  })
})

const codes = (...args: Parameters<typeof doseFindings>) => doseFindings(...args).map((f) => f.code)

describe('the dosing time', () => {
  const running = {
    kind: 'flow-and-seconds',
    flow: { value: '12', unit: 'L/min' },
    seconds: { value: '11', unit: 's' },
    spread: null,
  } as const

  it('longer than the rinse doses into the drain', () => {
    expect(codes(pump(), running)).toEqual(['longer-than-rinse'])
    expect(codes(pump({ doseSeconds: { value: '11', unit: 's' } }), running)).toEqual([])
    expect(codes(pump({ feeds: 'wash-tank' }), running)).toEqual([])
  })

  it('shorter than two roller passages or half a second does not repeat', () => {
    const rollers = { perMinute: '20', count: '3' }
    expect(codes(pump({ doseSeconds: { value: '1.5', unit: 's' }, rollers }), rinse(3))).toEqual([
      'few-pulses-per-dose',
    ])
    expect(codes(pump({ doseSeconds: { value: '0.4', unit: 's' } }), rinse(3))).toEqual(['too-short'])
    expect(codes(pump({ doseSeconds: null }), rinse(3))).toEqual([])
  })
})

describe('any numbers', () => {
  const text = fc.oneof(
    fc.double().map(String),
    fc.integer({ min: 0, max: 2000 }).map(String),
    fc.constantFrom('', '0', '0.000000000000001', '999999999999999'),
  )
  it('give finite results or a problem', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...BASES),
        fc.array(text, { minLength: 8, maxLength: 8 }),
        fc.double(),
        (basis, t, value) => {
          const at = (i: number) => t[i] ?? ''
          const here = {
            rinse: rinse(at(0), at(1)),
            product: product({
              density: { value: at(2), unit: 'g/mL' },
              strength: basis === 'ppm-vv' ? trade(at(3)) : quat(at(3)),
            }),
          }
          const p = pump({
            doseSeconds: { value: at(4), unit: 's' },
            window: window(basis, at(5), at(6), at(7)),
          })
          const dose = exactly(value, 'mL/rack')
          return (
            allFinite(requiredFlow(p, here)) &&
            allFinite(requiredDose(basis, value, here)) &&
            allFinite(doseFindings(p, here.rinse)) &&
            (!dose.ok ||
              (allFinite(onBasis(basis, dose.value, here)) && allFinite(strengthsOf(dose.value, p, here))))
          )
        },
      ),
      { numRuns: 3000, endOnFailure: true },
    )
  })

  it('more dose is always more on every basis, more water always less', () => {
    const positive = fc.integer({ min: 1, max: 5000 }).map((n) => n / 100)
    fc.assert(
      fc.property(fc.constantFrom(...BASES), positive, positive, (basis, dose, litres) => {
        const on = (d: number, l: number) =>
          good(onBasis(basis, mLPerRack(d), context(l.toFixed(2), quat(10)))).value
        return (
          on(dose * 1.01, litres) > on(dose, litres) &&
          (basis === 'mL-per-rack' || on(dose, litres + 0.01) < on(dose, litres))
        )
      }),
    )
  })
})
