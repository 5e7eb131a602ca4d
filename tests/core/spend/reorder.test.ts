import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ok } from '#core/outcome'
import { daysUntil, steadyUse, useAhead } from '#core/spend/ahead'
import { openCalendar } from '#core/spend/calendar'
import { reorder, type ReorderInput } from '#core/spend/reorder'
import { reorderPoint } from '#core/spend/reorder-point'
import { outlasting } from '#core/spend/shelf-life'
import { estimate } from '#core/statistics/make-estimate'
import reference from '../../references/inventory.json' with { type: 'json' }
import { aMovement, aProduct, good } from './build'

describe('the reorder point', () => {
  /** Source: tests/references/inventory.json, Stevenson, Operations Management, 14th ed., ch. 12, example 8. */
  it('is the textbook’s: mean lead-time demand 50, standard deviation 5, 3 % risk', () => {
    const { inputs, published, tolerance } = reference.reorder_point
    // one day of lead time whose demand is 50 with standard deviation 5 is that example's lead time
    const point = reorderPoint({
      perDay: inputs.mean_LT_demand,
      perDaySpread: inputs.sigma_dLT,
      leadDays: 1,
      leadDaysSpread: 0,
      perDayDoubt: 0,
      serviceLevel: 1 - inputs.stockout_risk,
    })
    expect(Math.abs(point.z - published.z)).toBeLessThan(tolerance.z)
    expect(Math.abs(point.safetyStock - published.safety_stock)).toBeLessThan(tolerance.safety_stock)
    expect(Math.abs(point.reorderPoint - published.ROP)).toBeLessThan(tolerance.ROP)
  })

  /** Source: the same textbook's three forms, rows worked by hand. */
  it.each(reference.spread_over_lead_time.rows)(
    'spreads $sigma_dLT over a lead time of $LT at $d a day',
    (row) => {
      const point = reorderPoint({
        perDay: row.d,
        perDaySpread: row.sigma_d,
        leadDays: row.LT,
        leadDaysSpread: row.sigma_LT,
        perDayDoubt: 0,
        serviceLevel: 0.95,
      })
      expect(point.spread).toBeCloseTo(row.sigma_dLT, 9)
    },
  )

  /** Source: standard normal quantiles to nine digits. */
  it.each(reference.z.rows)('takes z = $z for $service', (row) => {
    const point = reorderPoint({
      perDay: 1,
      perDaySpread: 0,
      leadDays: 1,
      leadDaysSpread: 0,
      perDayDoubt: 0,
      serviceLevel: row.service,
    })
    expect(point.z).toBeCloseTo(row.z, 8)
  })
})

const product = aProduct({
  leadTimeDays: '4',
  shelfLifeDays: '365',
  prices: [
    { from: '2026-01-01', currency: 'EUR', price: '50.00', containerSize: { value: '10', unit: 'L' } },
  ],
})
const litres = (value: number) => estimate(value, 'L', [{ source: 'count', standard: 0.1 }])
const perMonth = (value: number) => estimate(value, 'L/month', [{ source: 'racks', standard: value * 0.05 }])
const steady = (litres: ReorderInput['perMonth']) => steadyUse(good(litres).value / 30.4375)
const order = (over: Partial<ReorderInput> = {}) =>
  reorder({
    ahead: steady(over.perMonth ?? perMonth(30.4375)),
    product,
    currency: 'EUR',
    asOf: '2026-03-01',
    stock: litres(20),
    perMonth: perMonth(30.4375),
    serviceLevel: '95',
    coverDays: 30,
    ...over,
  })

const positive = (max: number) => fc.double({ min: 0.1, max, noNaN: true })

describe('an order', () => {
  it('falls on the day stock comes down to the reorder point', () => {
    const advice = good(order())
    // by hand: 1 L a day, 4 days: 4 + 1.645 sqrt(4 x 0.09 + 0.8^2 + 0.2^2) = 5.677 L
    expect(advice.reorderPoint).toBeCloseTo(4 + 1.644854 * Math.sqrt(0.36 + 0.64 + 0.04), 5)
    expect(advice.daysOfCover).toBeCloseTo(20, 9)
    expect(advice.runsOutOn).toBe('2026-03-21')
    expect(advice.orderOn).toBe('2026-03-15')
    expect(advice.orderNow).toBe(false)
  })

  it('is whole containers, enough for a cover period on top of the reorder point', () => {
    const advice = good(order())
    // by hand: 5.677 + 30 - 6 (what is left when the order is placed) = 29.68 L
    expect(advice.containers).toBe(3)
    expect(good(advice.cost).toFixed(2)).toBe('150.00')
  })

  it('is due now when less is left than the reorder point', () => {
    expect(good(order({ stock: litres(5) }))).toMatchObject({ orderNow: true, orderOn: '2026-03-01' })
  })

  it('is due now exactly when its day is today, also when stock comes down to the point by tomorrow', () => {
    // the reorder point is 5.677 L, and 1 L goes a day
    expect(good(order({ stock: litres(6) }))).toMatchObject({ orderNow: true, orderOn: '2026-03-01' })
    expect(good(order({ stock: litres(7) }))).toMatchObject({ orderNow: false, orderOn: '2026-03-02' })
    fc.assert(
      fc.property(positive(100), positive(300), (stock, use) => {
        const advice = good(order({ stock: litres(stock), perMonth: perMonth(use) }))
        expect(advice.orderNow).toBe(advice.orderOn === '2026-03-01')
      }),
    )
  })

  it('is cut to what is used up within the shelf life', () => {
    const advice = good(order({ product: { ...product, shelfLifeDays: '30' } }))
    // at the order 6 L are left; 30 days use 30 L, so 24 L may come: two containers
    expect(advice).toMatchObject({ containers: 2, cappedByShelfLife: true })
  })

  it('says when even one container outlasts its shelf life', () => {
    const advice = good(order({ perMonth: perMonth(3), product: { ...product, shelfLifeDays: '60' } }))
    expect(advice).toMatchObject({ containers: 1, containerOutlastsShelfLife: true })
  })

  it('is not advised without a lead time, and not for a product that is not used', () => {
    expect(order({ product: { ...product, leadTimeDays: null } })).toMatchObject({
      problem: { code: 'number-missing', field: 'product.leadTimeDays' },
    })
    expect(order({ perMonth: ok(good(perMonth(0))) })).toMatchObject({
      problem: { code: 'cannot-compute', reason: 'zero-flow' },
    })
  })

  it('never leaves less on arrival than it set out to keep', () => {
    fc.assert(
      fc.property(positive(500), positive(300), fc.integer({ min: 1, max: 60 }), (stock, use, lead) => {
        const advice = good(
          order({
            stock: litres(stock),
            perMonth: perMonth(use),
            product: { ...product, leadTimeDays: String(lead), shelfLifeDays: null },
          }),
        )
        const left =
          stock - ((Date.parse(advice.orderOn) - Date.parse('2026-03-01')) / 86_400_000) * advice.perDay
        expect(Number.isInteger(advice.containers)).toBe(true)
        expect(left + advice.containers * 10).toBeGreaterThanOrEqual(
          advice.reorderPoint + 30 * advice.perDay - 1e-6,
        )
        // an order is never put off past the reorder point
        if (!advice.orderNow) expect(left).toBeGreaterThanOrEqual(advice.reorderPoint - 1e-6)
      }),
    )
  })
})

/** A site open every day and closed for 20 days from the 11th of March. */
const closing = good(
  openCalendar(
    {
      daysPerWeek: '7',
      closures: [{ id: 'c', from: '2026-03-11', to: '2026-03-30', reason: 'holidays' }],
      seasons: [],
      growthPercentPerYear: null,
    },
    '2026-03-01',
  ),
)
const aYear = good(perMonth(30.4375 * (345 / 365)))

describe('an order around days closed', () => {
  // by hand: 1 L on each open day; an average month of that year has 345/365 of 30.4375 open days
  const ahead = useAhead(closing, aYear.value)

  it('uses nothing while closed: 10 L by the 11th, 10 L still on the 30th, 11 L the day after', () => {
    expect(ahead(10)).toBeCloseTo(10, 9)
    expect(ahead(30)).toBeCloseTo(10, 9)
    expect(ahead(31)).toBeCloseTo(11, 9)
    expect(ahead(30.5)).toBeCloseTo(10.5, 9)
  })

  it('lasts through them: 15 L are gone after 35 days, not after 15', () => {
    expect(daysUntil(ahead, 15)).toBeCloseTo(35, 9)
    const advice = good(order({ ahead, perMonth: ok(aYear), stock: litres(15) }))
    expect(advice.daysOfCover).toBeCloseTo(35, 9)
    expect(advice.runsOutOn).toBe('2026-04-05')
  })

  it('comes in time for the first days open again', () => {
    const advice = good(order({ ahead, perMonth: ok(aYear), stock: litres(11) }))
    // by hand: 1 L is left on the 11th; four days of delivery before the 31st end the day before use begins again
    expect(advice.orderNow).toBe(false)
    expect(advice.orderOn < '2026-03-31').toBe(true)
    expect(advice.orderOn >= '2026-03-05').toBe(true)
  })

  it('follows the year on a calendar and the average after two', () => {
    expect(ahead(3650) - ahead(3649)).toBeCloseTo(aYear.value / 30.4375, 9)
    expect(daysUntil(ahead, 1e9)).toBe(3650)
  })
})

describe('what keeps for a time only', () => {
  const bleach = aProduct({ shelfLifeDays: '60' })
  const came = (on: string, containers: string) =>
    aMovement({ kind: 'delivery', on, productId: bleach.id, fullContainers: containers, part: null })
  const shelf = (litresLeft: number, perDay: number, ...movements: readonly ReturnType<typeof came>[]) =>
    good(outlasting(bleach, movements, litresLeft, steadyUse(perDay), '2026-03-01'))

  it('is told of when it will not be used up in time, the oldest first', () => {
    // 20 L of the 1st of February keep to the 2nd of April; at 0.25 L a day they last to the 20th of May
    expect(shelf(20, 0.25, came('2026-02-01', '2'))).toEqual({
      deliveredOn: '2026-02-01',
      keepsUntil: '2026-04-02',
      usedUpOn: '2026-05-20',
      past: false,
    })
    // at 1 L a day they are gone by the 21st of March
    expect(shelf(20, 1, came('2026-02-01', '2'))).toBeNull()
  })

  it('is told of when its time is past already', () => {
    expect(shelf(5, 1, came('2025-12-01', '2'))).toMatchObject({ deliveredOn: '2025-12-01', past: true })
  })

  it('is what came last: an old delivery long used up does not count', () => {
    expect(shelf(10, 1, came('2025-10-01', '5'), came('2026-02-20', '1'))).toBeNull()
    // one litre of the old one is still there
    expect(shelf(11, 1, came('2025-10-01', '5'), came('2026-02-20', '1'))).toMatchObject({
      deliveredOn: '2025-10-01',
    })
  })

  it('says nothing of a product without a shelf life, or of deliveries never booked', () => {
    expect(good(outlasting(aProduct({ shelfLifeDays: null }), [], 20, steadyUse(1), '2026-03-01'))).toBeNull()
    expect(shelf(20, 0.1)).toBeNull()
  })
})
