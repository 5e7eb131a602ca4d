import { describe, expect, it } from 'vitest'
import { estimate } from '#core/statistics/make-estimate'
import { siteUse } from '#core/spend/site-use'
import { primingLoss } from '#core/spend/priming'
import { pumpSaving } from '#core/spend/saving'
import { pumpUse } from '#core/spend/pump-use'
import { openCalendar } from '#core/spend/calendar'
import { averageMonth } from '#core/spend/span'
import { rackRate } from '#core/spend/racks'
import { aMachine, aProduct, aPump, aSetting, aSite, good, id } from './build'

/**
 * Source: the worked month of the project's own domain notes, computed there by script: 120 racks a day, 6 days a week;
 * rinse aid 1.00 mL/rack at 5.80 a litre; detergent 6 g/rack and 80 g a fill, two fills a day, 1.2 g/mL, 3.40 a litre in
 * 20 L containers; uncertainties 1.05 %, 2 % and 5 %; a line of 6.35 mm bore and 2.0 m; a dose brought from 1.45 to
 * 1.00 mL.
 */
const price = (perContainer: string, litres: string) => [
  {
    from: '2026-01-01',
    currency: 'EUR',
    price: perContainer,
    containerSize: { value: litres, unit: 'L' as const },
  },
]
const rinseAid = aProduct({ id: id(1), prices: price('58.00', '10') })
const detergent = aProduct({
  id: id(2),
  role: 'detergent',
  density: { value: '1.2', unit: 'g/mL' },
  prices: price('68.00', '20'),
})
const aid = aPump({ id: id(11), productId: id(1), doseSeconds: { value: '2', unit: 's' } })
const feed = aPump({
  id: id(12),
  role: 'detergent',
  productId: id(2),
  feeds: 'wash-tank',
  doseSeconds: { value: '2.5', unit: 's' },
  window: { basis: 'g-per-L-tank', low: '1.6', target: '2', high: '2.4' },
})
const machine = aMachine({
  racksPerDay: '120',
  racksSpread: '5',
  wash: {
    kind: 'tank',
    volume: { value: '40', unit: 'L' },
    drainAndFillsPerDay: '2',
    closure: 'continuous',
    carriedOut: null,
    upstream: null,
    feeding: 'with-rinse',
  },
  pumps: [aid, feed],
})
const site = aSite({
  calendar: { daysPerWeek: '6', closures: [], seasons: [], growthPercentPerYear: null },
  machines: [machine],
})

describe('the worked month', () => {
  const { use, totals } = siteUse(
    site,
    [rinseAid, detergent],
    [aSetting(id(11), 30, 2, 0.0105, 0.02), aSetting(id(12), 120, 2.5)],
    '2026-03-01',
  )

  it('has 3130.71 racks', () => {
    expect(good(totals.racksPerMonth)).toBeCloseTo(3130.714, 3)
  })

  it('takes 3.131 L of rinse aid for 18.16', () => {
    expect(good(use[0]?.litresPerMonth).value).toBeCloseTo(3.131, 3)
    expect(good(use[0]?.costPerMonth).toFixed(2)).toBe('18.16')
  })

  it('takes 19.13 L of detergent, 3.479 L of it for fresh fills, for 65.05: 0.9566 of a container', () => {
    expect(good(use[1]?.litresPerMonth).value).toBeCloseTo(19.13, 2)
    expect(use[1]?.parts?.charges).toBeCloseTo(3.479, 3)
    expect(good(use[1]?.costPerMonth).toFixed(2)).toBe('65.05')
    expect(good(use[1]?.containersPerMonth)).toBeCloseTo(0.9566, 4)
  })

  it('costs 0.02658 per rack', () => {
    expect(good(totals.costPerRack).toFixed(5)).toBe('0.02658')
  })

  it('is known to 5.487 % (standard): flow 1.05 %, seconds 2 %, racks 5 %', () => {
    const litres = good(use[0]?.litresPerMonth)
    expect(litres.standard / litres.value).toBeCloseTo(0.05487, 5)
    expect(2 * litres.standard).toBeCloseTo(0.344, 3)
  })
})

describe('priming', () => {
  const lined = aPump({
    ...aid,
    tube: {
      ...aid.tube,
      bore: { value: '6.35', unit: 'mm' },
      lineLength: { value: '2.0', unit: 'm' },
    },
  })

  it('of that line loses 93.34 mL at 30 mL/min held for a minute', () => {
    expect(good(primingLoss(lined, 30))).toBeCloseTo(93.34, 2)
  })

  it('is part of the month: containers are emptied by use and priming together', () => {
    const calendar = good(openCalendar(site.calendar, '2026-03-01'))
    const one = pumpUse({
      pump: lined,
      machine,
      product: rinseAid,
      currency: 'EUR',
      day: '2026-03-01',
      span: averageMonth(calendar),
      racks: rackRate(machine, calendar, []),
      setting: aSetting(id(11), 30, 2),
    })
    const litres = good(one.litresPerMonth).value
    const containers = good(one.containersPerMonth)
    // by hand: what racks take, and one prime of 93.34 mL for every container
    expect(litres).toBeCloseTo(3.1307143 + containers * 0.09334, 4)
    expect(one.parts?.priming).toBeCloseTo(containers * 0.09334, 4)
  })
})

const dose = (value: number) =>
  estimate(value, 'mL/rack', [{ source: 'replicates', standard: 0.01 * value, degreesOfFreedom: 4 }])

const ofSeconds = (value: number) =>
  estimate(value, 'mL/rack', [{ source: 'dose-seconds', standard: 0.02 * value }])

describe('the saving of an adjustment', () => {
  const calendar = good(openCalendar(site.calendar, '2026-03-01'))
  const saving = (found: number, left: number) =>
    pumpSaving({
      pump: aid,
      machine,
      product: rinseAid,
      currency: 'EUR',
      day: '2026-03-01',
      span: averageMonth(calendar),
      racks: rackRate(machine, calendar, []),
      found: dose(found),
      left: dose(left),
      sameInstrument: true,
    })

  it('from 1.45 to 1.00 mL is 1.409 L and 8.171 a month, 98.05 a year', () => {
    expect(good(saving(1.45, 1).litresPerMonth).value).toBeCloseTo(1.409, 3)
    expect(good(saving(1.45, 1).moneyPerMonth).value).toBeCloseTo(8.171, 3)
    expect(12 * good(saving(1.45, 1).moneyPerMonth).value).toBeCloseTo(98.05, 2)
  })

  it('is negative, by the same amount, when the pump was under-dosing', () => {
    expect(good(saving(1, 1.45).moneyPerMonth).value).toBeCloseTo(-8.171, 3)
  })

  it('has an interval: variances of both doses times racks, and of racks times the change', () => {
    const money = good(saving(1.45, 1).moneyPerMonth)
    const n = 3130.7142857
    const byDose = (Math.hypot(0.0145, 0.01) * n * 5.8) / 1000
    const byRacks = (0.45 * n * 0.05 * 5.8) / 1000
    expect(money.standard).toBeCloseTo(Math.hypot(byDose, byRacks), 6)
    expect(money.low).toBeLessThan(money.value)
    expect(money.high - money.value).toBeCloseTo(money.expanded, 9)
  })

  it('knows the seconds of both doses no better apart than together: their doubt goes with the change alone', () => {
    const saved = pumpSaving({
      pump: aid,
      machine,
      product: rinseAid,
      currency: 'EUR',
      day: '2026-03-01',
      span: averageMonth(calendar),
      racks: rackRate(machine, calendar, []),
      found: ofSeconds(1.45),
      left: ofSeconds(1),
      sameInstrument: false,
    })
    // by hand: 2 % of 0.45 mL, and 5 % of the racks, each on 3130.714 racks
    expect(good(saved.litresPerMonth).standard).toBeCloseTo(0.45 * 3.1307143 * Math.hypot(0.02, 0.05), 7)
  })

  it('counts timed initial charges too, because they follow the flow', () => {
    const timed = { ...feed, initialChargeSeconds: { value: '25', unit: 's' as const } }
    const saved = pumpSaving({
      pump: timed,
      machine,
      product: detergent,
      currency: 'EUR',
      day: '2026-03-01',
      span: averageMonth(calendar),
      racks: rackRate(machine, calendar, []),
      found: dose(6),
      left: dose(5),
      sameInstrument: true,
    })
    // by hand: 1 mL x 3130.714 racks, and 10 mL (25 s against 2.5 s a rack) x 2 fills x 26.0893 days
    expect(good(saved.litresPerMonth).value).toBeCloseTo(3.130714 + 0.521786, 5)
  })
})
