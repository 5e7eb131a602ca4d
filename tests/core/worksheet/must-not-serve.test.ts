import { describe, expect, it } from 'vitest'
import type { Product } from '#core/records/index'
import { entry } from '#core/units/entry'
import { computeWorksheet } from '#core/worksheet/compute'
import { mustNotServe } from '#core/worksheet/must-not-serve'
import { caught, cylinder, machine, product, pump, run, site, visit, work } from '../../support/make-site'

const glass = cylinder()

/** 20 mL/min for 7.5 s into 4.467 L: 2.5 mL, 559 ppm v/v and, at 9.5 trade percent, 53.2 mg/L of chlorine. */
function asLeft(
  label: Product['labelLimits'],
  low: string,
  high: string,
  role: Product['role'] = 'sanitizer',
) {
  const bleach = product({
    role,
    strength: { kind: 'trade-percent', percent: '9.5', measuredOn: null },
    labelLimits: label,
  })
  const fed = pump({
    role,
    productId: bleach.id,
    doseSeconds: entry('7.5', 's'),
    window: { basis: 'mg-per-L-active', low, target: '53', high },
  })
  const of = machine({
    sanitizing: 'chemical',
    rinse: { kind: 'measured', perRack: entry('4.467', 'L'), spread: '1' },
    pumps: [fed],
  })
  const runs = ['20', '20.1', '19.9'].map((volume) => run(entry(volume, 'mL')))
  const record = site({
    machines: [of],
    visits: [visit({ work: [work(fed.id, [caught(runs, { instrumentId: glass.id })])] })],
  })
  const worksheet = computeWorksheet({
    site: record,
    products: [bleach],
    instruments: [glass],
    settings: null,
    asOf: '2026-03-09',
  })
  const [result] = worksheet.visits[0]?.pumps ?? []
  if (result === undefined) throw new Error('the pump was tested')
  return { state: result.state, stop: mustNotServe(result, result.state, label) }
}

const wide = (label: Product['labelLimits']) => asLeft(label, '25', '100')

describe('ware that must not be served on', () => {
  it('is that of a sanitizer outside its window', () => {
    expect(asLeft(null, '52.9', '53.1').stop).toBe(true)
    expect(asLeft(null, '25', '100').stop).toBe(false)
  })

  it('is that of one in a window wider than its label, in mg/L active or ppm of product', () => {
    expect(wide({ basis: 'mg-per-L-active', low: '60', high: null })).toEqual({
      state: 'proved-in',
      stop: true,
    })
    expect(wide({ basis: 'mg-per-L-active', low: null, high: '50' }).stop).toBe(true)
    expect(wide({ basis: 'mg-per-L-active', low: '50', high: '100' }).stop).toBe(false)
    expect(wide({ basis: 'ppm-vv', low: '600', high: '900' }).stop).toBe(true)
    expect(wide({ basis: 'ppm-vv', low: '500', high: '900' }).stop).toBe(false)
  })

  it('is not asked of a rinse aid', () => {
    expect(asLeft({ basis: 'ppm-vv', low: '600', high: null }, '25', '100', 'rinse-aid').stop).toBe(false)
  })
})
