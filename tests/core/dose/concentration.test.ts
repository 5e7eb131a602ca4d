import { describe, expect, it } from 'vitest'
import { dosePerRack, ppmByVolume } from '#core/dose/concentration'
import { doseSeconds } from '#core/dose/dose-seconds'
import { onBasis, strengthsOf } from '#core/dose/on-basis'
import {
  hypochloriteToAvailable,
  tradeToWeightPercent,
  weightToTradePercent,
} from '#core/dose/product-strength'
import { rinseVolume } from '#core/dose/rinse-volume'
import type { WindowBasis } from '#core/records/index'
import { exactly } from '#core/statistics/make-estimate'
import { context, mLPerMin, mLPerRack, pump, quat, rinse, trade } from '#tests/core/dose/records'
import { product } from '#tests/core/drawdown/records'
import { codeOf, good } from '#tests/support/outcomes'
import reference from '../../references/dose.json'
import hypochlorite from '../../references/hypochlorite.json'

const valueOn = (basis: WindowBasis, dose: number, here: Parameters<typeof onBasis>[2]) =>
  good(onBasis(basis, mLPerRack(dose), here)).value

describe('dose and concentration: worked examples, derived from the stated inputs', () => {
  const dose = good(dosePerRack(mLPerMin(10), good(doseSeconds(pump()))))

  it('10 mL/min for 12 s is 2.000 mL a rack', () => {
    expect(dose.value).toBeCloseTo(reference.dose.D, 12)
  })

  it('in 3.0 L: 666.2 ppm v/v exactly (not 666.7), 680.0 mg/L at 1.02 g/mL', () => {
    expect(valueOn('ppm-vv', 2, context(3))).toBeCloseTo(reference.dose.ppm_exact, 9)
    expect(Math.abs(reference.dose.ppm_exact / reference.dose.ppm_approx - 1)).toBeCloseTo(666.2e-6, 6)
    expect(valueOn('mg-per-L-product', 2, context(3))).toBeCloseTo(reference.dose.mgL, 9)
  })

  it('2.5 mL of trade 10 % chlorine in 4.467 L is 55.97 mg/L; the same by weight; 44.77 when aged to 8 %', () => {
    expect(valueOn('mg-per-L-active', 2.5, context('4.467', trade(10)))).toBeCloseTo(reference.dose.cl2, 9)
    expect(valueOn('mg-per-L-active', 2.5, context('4.467', trade(8)))).toBeCloseTo(
      reference.dose.cl2_aged,
      9,
    )
    const byWeight = context('4.467', quat('8.62068965517241'), '1.16')
    expect(valueOn('mg-per-L-active', 2.5, byWeight)).toBeCloseTo(reference.dose.cl2, 9)
  })

  it('quat 10 % by weight at 1.0 g/mL: 4.500 mL in 3.0 L is 150 mg/L', () => {
    expect(valueOn('mg-per-L-active', 4.5, context(3, quat(10), '1.0'))).toBeCloseTo(150, 9)
  })

  it('120 mL of detergent at 1.2 g/mL in 40 L is 3.600 g/L', () => {
    expect(valueOn('g-per-L-tank', 120, context(40, { kind: 'none' }, '1.2'))).toBeCloseTo(3.6, 12)
  })

  it.each(reference.scenarios)('site $id: dose, rinse-aid ppm and tank strength to 12 digits', (site) => {
    const { result } = site
    expect(good(dosePerRack(mLPerMin(site.ra.q), good(exactly(site.ra.t, 's')))).value).toBeCloseTo(
      result.ra_mL,
      12,
    )
    const ppm = valueOn('ppm-vv', result.ra_mL, context(site.r))
    expect(ppm / result.ra_ppm).toBeCloseTo(1, 12)
    const { san } = site
    if (san !== undefined && 'san_mgL' in result) {
      const active = valueOn('mg-per-L-active', (san.q * san.t) / 60, context(site.r, trade(san.trade)))
      expect(active / (result.san_mgL ?? Number.NaN)).toBeCloseTo(1, 12)
    }
    if (site.V !== null) {
      const tank = valueOn(
        'g-per-L-tank',
        (site.det.q * site.det.t) / 60,
        context(site.r, { kind: 'none' }, site.det.rho),
      )
      expect(tank / result.det_css).toBeCloseTo(1, 12)
    }
  })
})

// The charts say "ppm" for NaOCl percent x 10 000 per volume of water; ours is available chlorine by mass.
const chart = (row: (typeof hypochlorite.dilution_rows.rows)[number]) =>
  [row.NaOCl_percent].flat().map((percent) => {
    const available = hypochloriteToAvailable(percent)
    const here = context((row.water_mL / 1000).toFixed(9), quat(available.toFixed(9)), row.density_assumed)
    return {
      available: valueOn('mg-per-L-active', row.bleach_mL, here),
      simple: valueOn(
        'mg-per-L-active',
        row.bleach_mL,
        context((row.water_mL / 1000).toFixed(9), trade(percent)),
      ),
    }
  })

const published = (id: string) => {
  const row = hypochlorite.dilution_rows.rows.find((r) => r.id === id)
  if (row === undefined) throw new Error(`no row ${id}`)
  return { row, found: chart(row).map((f) => f.simple) }
}

describe('hypochlorite dilution rows of public health charts, each with its own tolerance', () => {
  it.each(hypochlorite.dilution_rows.rows)('$id: $input', (row) => {
    const simple = [row.recomputed_ppm.simple_percent_x_10000].flat()
    const available = [row.recomputed_ppm.available_Cl2_with_density].flat()
    chart(row).forEach((found, i) => {
      expect(Math.abs(found.simple - (simple[i] ?? Number.NaN))).toBeLessThanOrEqual(0.051)
      // The recomputed column divides by bleach and water together; per litre of water it is that much more.
      const perTotal = found.available / (1 + row.bleach_mL / row.water_mL)
      expect(Math.abs(perTotal - (available[i] ?? Number.NaN))).toBeLessThanOrEqual(0.051)
    })
  })

  it.each(['co1', 'co3', 'co5'])('%s is within its 15 % of the printed figure', (id) => {
    const { row, found } = published(id)
    const printed = Number([row.published_ppm].flat()[0])
    expect(Math.abs((found[0] ?? Number.NaN) / printed - 1)).toBeLessThan(0.15)
  })

  it('wa4 lies inside 580 to 800, wa6 inside 600 to 800, ks2 within 0.1 of 50.04, epa1 within 0.01 of 5.55', () => {
    for (const ppm of published('wa4').found) expect(ppm).toBeGreaterThan(580)
    for (const ppm of [...published('wa4').found, ...published('wa6').found]) expect(ppm).toBeLessThan(800)
    expect(published('wa6').found[0]).toBeGreaterThan(600)
    expect(Math.abs((published('ks2').found[0] ?? 0) - 50.04)).toBeLessThan(0.1)
    expect(Math.abs((published('epa1').found[0] ?? 0) - 5.55)).toBeLessThan(0.01)
  })

  it('fs1: one part made up to ten of 5.25 % is 5250 by the total volume', () => {
    const { row, found } = published('fs1')
    expect((found[0] ?? 0) / (1 + row.bleach_mL / row.water_mL)).toBeCloseTo(5250, 6)
  })

  it('wa2 does not give its printed 100: the chart contradicts its own arithmetic', () => {
    for (const ppm of published('wa2').found) expect(ppm).toBeGreaterThan(130)
  })
})

describe('strength of hypochlorite', () => {
  it.each(hypochlorite.definition_rows.rows)('definition row %#: trade and weight percent', (row) => {
    const tolerance = row.tolerance ?? 0.0006
    if (row.wt_pct_NaOCl !== undefined && row.wt_pct_avail !== undefined && row.trade_pct === undefined)
      expect(Math.abs(hypochloriteToAvailable(row.wt_pct_NaOCl) - row.wt_pct_avail)).toBeLessThanOrEqual(
        tolerance,
      )
    if (row.trade_pct !== undefined && row.sg !== undefined && row.wt_pct_avail !== undefined) {
      expect(Math.abs(tradeToWeightPercent(row.trade_pct, row.sg) - row.wt_pct_avail)).toBeLessThanOrEqual(
        tolerance,
      )
      expect(weightToTradePercent(row.wt_pct_avail, row.sg)).toBeCloseTo(row.trade_pct, 2)
    }
    if (row.wt_pct_NaOCl !== undefined && row.trade_pct !== undefined && row.sg !== undefined)
      // The published ratio is 1.05, the exact one 1.04987: 0.02 % apart.
      expect(
        weightToTradePercent(hypochloriteToAvailable(row.wt_pct_NaOCl), row.sg) / row.trade_pct,
      ).toBeCloseTo(1, 2)
  })
})

describe('what a dose carries along', () => {
  it('seconds, rinse water, density and strength all add to the doubt', () => {
    const dose = good(dosePerRack(mLPerMin(20, 0.2), good(doseSeconds(pump({ doseSecondsSpread: '2' })))))
    const here = { rinse: rinse(3, '3'), product: product({ strength: quat(10) }) }
    const active = good(onBasis('mg-per-L-active', dose, here))
    expect(active.budget.map((l) => l.source).toSorted()).toEqual([
      'density',
      'dose-seconds',
      'replicates',
      'rinse-volume',
      'strength',
    ])
    const relative = Math.hypot(0.01, 0.02, 0.03, 0.01 / Math.sqrt(3), 0.1 / Math.sqrt(3))
    expect(active.standard / active.value).toBeCloseTo(relative, 12)
  })

  it('the density of a weighed flow cancels in mg/L of product and stays in ppm v/v', () => {
    const weighed = mLPerRack(2, 0, 'density')
    const line = {
      ...weighed,
      standard: 0.0115,
      budget: [
        {
          source: 'density',
          standard: 2 * (0.01 / Math.sqrt(3)),
          degreesOfFreedom: null,
          sign: -1,
          share: 1,
        },
      ],
    } as const
    expect(good(onBasis('mg-per-L-product', line, context(3))).standard).toBeCloseTo(0, 9)
    expect(good(onBasis('ppm-vv', line, context(3))).standard).toBeGreaterThan(3)
  })

  it('12.0 L/min for 11 s is 2.200 L', () => {
    const water = good(
      rinseVolume({
        kind: 'flow-and-seconds',
        flow: { value: '12.0', unit: 'L/min' },
        seconds: { value: '11', unit: 's' },
        spread: null,
      }),
    )
    expect(water.value).toBeCloseTo(2.2, 12)
    expect(water.standard / water.value).toBeCloseTo(0.03, 12)
  })
})

const units = (list: ReturnType<typeof strengthsOf>) =>
  list.map((s) => (s.ok ? s.value.unit : s.problem.code))

describe('what stands in the way', () => {
  it('without water there is a dose per rack and no concentration', () => {
    const here = { rinse: null, product: product() }
    expect(codeOf(onBasis('mL-per-rack', mLPerRack(2), here))).toBe('ok')
    expect(onBasis('ppm-vv', mLPerRack(2), here)).toMatchObject({ problem: { needed: 'rinse-volume' } })
    expect(codeOf(onBasis('ppm-vv', mLPerRack(2), { ...here, rinse: rinse(0) }))).toBe('number-out-of-range')
    expect(ppmByVolume(mLPerRack(0), good(exactly(0, 'L')))).toMatchObject({
      problem: { reason: 'no-water' },
    })
  })

  it.each([
    ['density below 0.8', context(3, { kind: 'none' }, '0.79'), 'mg-per-L-product'],
    ['density above 1.6', context(3, { kind: 'none' }, '1.61'), 'mg-per-L-product'],
    ['strength above 100 %', context(3, trade('100.1')), 'mg-per-L-active'],
    ['strength of nothing', context(3, trade(0)), 'mg-per-L-active'],
  ] as const)('%s is refused', (_, here, basis) => {
    expect(codeOf(onBasis(basis, mLPerRack(2), here))).toBe('number-out-of-range')
  })

  it('density 0.8 and 1.6 and strength 100 % are still allowed', () => {
    expect(codeOf(onBasis('mg-per-L-product', mLPerRack(2), context(3, { kind: 'none' }, '0.8')))).toBe('ok')
    expect(codeOf(onBasis('mg-per-L-product', mLPerRack(2), context(3, { kind: 'none' }, '1.6')))).toBe('ok')
    expect(codeOf(onBasis('mg-per-L-active', mLPerRack(2), context(3, trade(100))))).toBe('ok')
  })

  it('a product without strength has no active basis, one with it has three in the rinse and one in the tank', () => {
    expect(units(strengthsOf(mLPerRack(2), pump(), context(3)))).toEqual(['ppm-vv', 'mg/L-product'])
    expect(units(strengthsOf(mLPerRack(2), pump(), context(3, trade(10))))).toEqual([
      'ppm-vv',
      'mg/L-product',
      'mg/L-active',
    ])
    expect(units(strengthsOf(mLPerRack(2), pump({ feeds: 'wash-tank' }), context(3)))).toEqual([
      'g/L-product',
    ])
    expect(onBasis('mg-per-L-active', mLPerRack(2), context(3))).toMatchObject({
      problem: { needed: 'strength' },
    })
  })
})
