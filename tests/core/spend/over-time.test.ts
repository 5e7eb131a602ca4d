import { describe, expect, it } from 'vitest'
import type { Site } from '#core/records/index'
import { siteSpend } from '#core/spend/site-spend'
import type { PumpDose } from '#core/spend/types'
import { Decimal } from '#core/units/decimal'
import { aMachine, aProduct, aPump, aSetting, aSite, aVisit, good, id } from './build'

const row = (from: string, price: string) => ({
  from,
  currency: 'EUR',
  price,
  containerSize: { value: '10', unit: 'L' as const },
})
const product = aProduct({ name: 'Rinse aid', prices: [row('2025-01-01', '50.00')] })
const site = aSite({
  machines: [aMachine({ racksPerDay: '100', racksSpread: '3', pumps: [aPump()] })],
})

/** A visit that left the pump at a flow; 2 s a rack, so mL/rack = flow / 30. */
const visit = (n: number, on: string, found: number, left: number): PumpDose => ({
  visitId: id(n),
  pumpId: id(11),
  on,
  found: aSetting(id(11), found, 2).dose,
  left: aSetting(id(11), left, 2).dose,
  flowLeft: aSetting(id(11), left, 2).flow,
  changed: found !== left,
  sameInstrument: true,
})
const spendOf = (
  doses: readonly PumpDose[],
  over: { readonly site?: Site; readonly prices?: typeof product.prices } = {},
) =>
  siteSpend({
    site: over.site ?? site,
    products: [{ ...product, prices: over.prices ?? product.prices }],
    asOf: '2026-03-15',
    serviceLevel: '95',
    doses,
  })

describe('month by month', () => {
  it('a month is costed at the settings of its days: 14 days at 1 mL, 14 at 2 mL', () => {
    const spend = spendOf([visit(1, '2025-06-01', 30, 30), visit(2, '2026-02-15', 30, 60)])
    const february = spend.months.find((month) => month.month === '2026-02')
    // 100 racks x (14 x 1 + 14 x 2) mL = 4.2 L at 5.00 a litre
    expect(good(february?.lines[0]?.litres).value).toBeCloseTo(4.2, 9)
    expect(february?.cost.toFixed(2)).toBe('21.00')
  })

  it('and at the prices of its days: 14 days at 5.00, 14 at 6.00 a litre', () => {
    const spend = spendOf([visit(1, '2025-06-01', 30, 30)], {
      prices: [row('2025-01-01', '50.00'), row('2026-02-15', '60.00')],
    })
    // 1.4 L x 5.00 + 1.4 L x 6.00
    expect(spend.months.find((month) => month.month === '2026-02')?.cost.toFixed(2)).toBe('15.40')
  })

  it('the coming year goes on at today’s setting and at prices already known to come', () => {
    const spend = spendOf([visit(1, '2025-06-01', 30, 30)], {
      prices: [row('2025-01-01', '50.00'), row('2026-10-01', '60.00')],
    })
    const cost = (month: string) => spend.months.find((one) => one.month === month)?.cost.toFixed(2)
    expect(cost('2026-09')).toBe('15.00')
    expect(cost('2026-10')).toBe('18.60')
    expect(spend.months.map((one) => one.kind).filter((kind) => kind === 'current')).toHaveLength(1)
  })

  it('months before the first test are not known, rather than nothing', () => {
    const spend = spendOf([visit(1, '2025-12-10', 30, 30)])
    const [december, january] = ['2025-12', '2026-01'].map((month) =>
      spend.months.find((one) => one.month === month),
    )
    expect(december?.unknownLines).toBe(1)
    expect(december?.lines[0]?.cost).toMatchObject({ problem: { code: 'no-runs' } })
    expect(january?.unknownLines).toBe(0)
  })
})

describe('an old visit', () => {
  it('is costed at the price of its day, and at today’s beside it', () => {
    const spend = spendOf([visit(1, '2025-06-01', 30, 30)], {
      prices: [row('2025-01-01', '50.00'), row('2026-01-01', '60.00')],
    })
    // 100 racks x 30.4375 days x 1 mL = 3.04375 L
    expect(good(spend.visits[0]?.atItsDay).toFixed(2)).toBe('15.22')
    expect(good(spend.visits[0]?.atToday).toFixed(2)).toBe('18.26')
  })
})

describe('savings over the year', () => {
  it('count from each visit to the next, and add up with their signs', () => {
    const spend = spendOf([visit(1, '2025-09-15', 45, 30), visit(2, '2025-12-15', 24, 30)])
    const savings = good(spend.savings)
    // 1.5 to 1.0 mL for 91 days: 0.5 x 100 x 91 / 1000 L x 5.00 = 22.75; 0.8 to 1.0 mL for 90 days: -9.00
    expect(savings.visits.map((one) => good(one.soFar).value)).toEqual([
      expect.closeTo(22.75, 9),
      expect.closeTo(-9, 9),
    ])
    expect(good(savings.total).value).toBeCloseTo(13.75, 9)
    expect(good(savings.total).low).toBeLessThan(13.75)
  })

  it('are not told on the day of the visit itself, and count from the next day on', () => {
    const today = good(spendOf([visit(1, '2026-03-15', 45, 30)]).savings)
    expect(today.visits.map((one) => one.heldDays)).toEqual([0])
    expect(today.total).toMatchObject({ problem: { needed: 'history' } })
    // a day later: 0.5 mL x 100 racks / 1000 x 5.00 = 0.25
    const next = good(spendOf([visit(1, '2026-03-14', 45, 30)]).savings)
    expect(good(next.total).value).toBeCloseTo(0.25, 9)
  })

  it('before the last year no longer count, and a visit that changed nothing has none', () => {
    const spend = spendOf([visit(1, '2024-09-15', 45, 30), visit(2, '2025-03-10', 30, 30)])
    expect(good(spend.savings).visits).toEqual([])
    expect(good(spend.savings).total).toMatchObject({ problem: { needed: 'history' } })
  })
})

const counter = (on: string, count: string) =>
  aVisit({
    startedAt: `${on}T09:00:00.000Z`,
    readings: [
      {
        id: id(51),
        machineId: id(21),
        kind: 'rack-counter',
        at: `${on}T09:00:00.000Z`,
        value: null,
        count,
      },
    ],
  })

describe('what changed since last year', () => {
  const busier = {
    ...site,
    visits: [
      counter('2025-03-01', '0'),
      counter('2025-04-10', '4000'),
      counter('2026-01-10', '38375'),
      counter('2026-03-11', '45875'),
    ],
  }
  const doses = [visit(1, '2025-03-01', 30, 30), visit(2, '2026-01-10', 30, 36)]
  const changes = good(
    spendOf(doses, { site: busier, prices: [row('2025-01-01', '50.00'), row('2026-01-01', '60.00')] })
      .changes,
  )
  const step = (cause: string) => changes.steps.find((one) => one.cause === cause)?.change.toFixed(2)

  it('is told step by step: racks 100 to 125, dose 1.0 to 1.2 mL, price 5.00 to 6.00', () => {
    expect(changes.since).toBe('2025-03-15')
    // 3.04375 L x 5 = 15.22; x 1.25 = 19.02; x 1.2 = 22.83; x 1.2 = 27.39
    expect(changes.before.toFixed(2)).toBe('15.22')
    expect(step('racks')).toBe('3.80')
    expect(step('dose')).toBe('3.81')
    expect(step('price')).toBe('4.56')
    expect(changes.now.toFixed(2)).toBe('27.39')
  })

  it('ends at the average month the page begins with', () => {
    const spend = spendOf(doses, { site: busier })
    expect(good(spend.changes).now.equals(good(spend.totals.costPerMonth))).toBe(true)
  })

  it('adds up to the cent', () => {
    const sum = changes.steps.reduce((total, one) => total.plus(one.change), new Decimal(changes.before))
    expect(sum.equals(changes.now)).toBe(true)
  })

  it('of the product is its own step, with dose and price in it', () => {
    const cheap = aProduct({ id: id(2), name: 'Other rinse aid', prices: [row('2025-01-01', '20.00')] })
    const before = {
      id: id(95),
      at: '2025-03-01T10:00:00.000Z',
      machines: site.machines,
      water: site.water,
      products: [product],
      instruments: [],
    }
    const swapped = {
      ...site,
      machines: [aMachine({ racksPerDay: '100', racksSpread: '3', pumps: [aPump({ productId: id(2) })] })],
      snapshots: [before],
      visits: [{ ...counter('2025-03-01', '0'), setupId: id(95) }],
    }
    const told = good(
      siteSpend({
        site: swapped,
        products: [product, cheap],
        asOf: '2026-03-15',
        serviceLevel: '95',
        doses,
      }).changes,
    )
    // 15.22 at 5.00 a litre; then 1.2 mL at 2.00 a litre: 7.31 (7.305 rounded half up)
    expect(told.steps.map((one) => [one.cause, one.change.toFixed(2)])).toEqual([
      ['racks', '0.00'],
      ['dose', '0.00'],
      ['price', '0.00'],
      ['product', '-7.91'],
    ])
  })

  it('is not told of a record younger than a month', () => {
    expect(spendOf([visit(1, '2026-03-01', 30, 30)]).changes).toMatchObject({
      problem: { needed: 'history' },
    })
  })
})
