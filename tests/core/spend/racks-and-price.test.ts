import { describe, expect, it } from 'vitest'
import { openCalendar } from '#core/spend/calendar'
import { containerOf } from '#core/spend/container'
import { countedRacks, counterReadings } from '#core/spend/counter'
import { priceOn } from '#core/spend/price'
import { rackRate } from '#core/spend/racks'
import { aMachine, aProduct, aVisit, good, id } from './build'

const calendar = good(
  openCalendar({ daysPerWeek: '7', closures: [], seasons: [], growthPercentPerYear: null }, '2026-03-31'),
)
const at = (day: string, count: number) => ({ at: `${day}T09:00:00.000Z`, count })

const reading = (day: string, count: string, machineId = id(21)) => ({
  id: id(50),
  machineId,
  kind: 'rack-counter' as const,
  at: `${day}T09:00:00.000Z`,
  value: null,
  count,
})

const row = (from: string, price: string, litres = '10', currency = 'EUR') => ({
  from,
  currency,
  price,
  containerSize: { value: litres, unit: 'L' as const },
})

describe('a rack counter', () => {
  it('says racks a day from two readings', () => {
    const counted = countedRacks([at('2026-03-01', 1000), at('2026-03-31', 4000)], calendar)
    expect(counted?.perOpenDay).toBeCloseTo(100, 9)
    expect(counted?.racks).toBe(3000)
  })

  it('is doubtful by half a day at each end: 1.36 % over 30 days', () => {
    const counted = countedRacks([at('2026-03-01', 1000), at('2026-03-31', 4000)], calendar)
    // by hand: sqrt(2) x 0.5/sqrt(3) days over 30 days
    expect(counted?.relativeStandard).toBeCloseTo(0.013608, 6)
  })

  it('set back to zero between two readings loses that stretch and no other', () => {
    const counted = countedRacks(
      [at('2026-02-01', 9000), at('2026-02-11', 10_000), at('2026-02-21', 500), at('2026-03-03', 1500)],
      calendar,
    )
    expect(counted?.racks).toBe(2000)
    expect(counted?.perOpenDay).toBeCloseTo(100, 9)
  })

  it('says nothing from one reading, from less than a week, or from the future', () => {
    expect(countedRacks([at('2026-03-01', 1000)], calendar)).toBeNull()
    expect(countedRacks([at('2026-03-01', 1000), at('2026-03-05', 1400)], calendar)).toBeNull()
    expect(countedRacks([at('2026-03-01', 1000), at('2026-05-01', 9000)], calendar)).toBeNull()
  })

  it('counts what was read this evening, where that is tomorrow in UTC already', () => {
    const evening = { at: '2026-04-01T01:00:00.000Z', count: 4100 }
    expect(countedRacks([at('2026-03-01', 1000), evening], calendar)?.racks).toBe(3100)
  })

  it('counts open days only: a closed fortnight does not make a quiet machine', () => {
    const closed = good(
      openCalendar(
        {
          daysPerWeek: '7',
          closures: [{ id: id(9), from: '2026-03-08', to: '2026-03-21', reason: '' }],
          seasons: [],
          growthPercentPerYear: null,
        },
        '2026-03-31',
      ),
    )
    const counted = countedRacks([at('2026-03-01', 0), at('2026-03-31', 1600)], closed)
    expect(counted?.perOpenDay).toBeCloseTo(100, 9)
  })

  it('is read out of the visits of its own machine, in order of time', () => {
    const visits = [
      aVisit({ readings: [reading('2026-03-20', '900'), reading('2026-03-20', '7', id(22))] }),
      aVisit({ readings: [reading('2026-03-01', '100'), { ...reading('2026-03-02', '5'), count: null }] }),
    ]
    expect(counterReadings(visits, id(21)).map((row) => row.count)).toEqual([100, 900])
  })
})

describe('racks per day', () => {
  const machine = aMachine({ racksPerDay: '80', racksSpread: '6' })

  it('are as stated, with the spread stated, while no counter says better', () => {
    expect(good(rackRate(machine, calendar, []))).toMatchObject({
      from: 'stated',
      perOpenDay: 80,
      relativeStandard: 0.06,
      gap: null,
    })
  })

  it('are as counted where there is a counter, and the gap to what was stated is told', () => {
    const rate = good(rackRate(machine, calendar, [at('2026-03-01', 0), at('2026-03-31', 3000)]))
    expect(rate.from).toBe('counter')
    expect(rate.perOpenDay).toBeCloseTo(100, 9)
    expect(rate.gap).toBeCloseTo(0.25, 9)
  })

  it('are missing, not zero, when nobody said', () => {
    expect(rackRate(aMachine(), calendar, [])).toMatchObject({ problem: { needed: 'racks-per-day' } })
  })
})

describe('the price on a day', () => {
  const product = aProduct({
    prices: [row('2026-02-01', '64.00'), row('2025-01-01', '61.00'), row('2026-06-01', '30.00', '5')],
  })

  it.each([
    ['2025-01-01', '6.1'],
    ['2026-01-31', '6.1'],
    ['2026-02-01', '6.4'],
    ['2026-06-01', '6'],
  ])('%s: %s a litre, whatever order the rows stand in', (day, perLitre) => {
    expect(good(priceOn(product, day, 'EUR')).perLitre.toString()).toBe(perLitre)
  })

  it('does not reach back before the first row', () => {
    expect(priceOn(product, '2024-12-31', 'EUR')).toMatchObject({ problem: { code: 'no-price' } })
  })

  it('never takes another currency for the site’s own', () => {
    const outcome = priceOn(product, '2026-03-01', 'USD')
    expect(outcome).toMatchObject({ problem: { code: 'currencies-differ', first: 'USD', second: 'EUR' } })
  })

  it('of a US gallon container is per litre exactly', () => {
    const gallon = aProduct({
      prices: [
        {
          from: '2026-01-01',
          currency: 'USD',
          price: '37.85411784',
          containerSize: { value: '1', unit: 'gal-us' },
        },
      ],
    })
    // 1 US gal = 3.785 411 784 L exactly (NIST SP 811, appendix B.8)
    expect(good(priceOn(gallon, '2026-03-01', 'USD')).perLitre.toString()).toBe('10')
  })

  it('is refused for a container that holds nothing, and for a price below nothing', () => {
    const empty = aProduct({ prices: [row('2026-01-01', '5', '0')] })
    const negative = aProduct({ prices: [row('2026-01-01', '-5')] })
    expect(priceOn(empty, '2026-03-01', 'EUR')).toMatchObject({ problem: { code: 'number-out-of-range' } })
    expect(priceOn(negative, '2026-03-01', 'EUR')).toMatchObject({ problem: { code: 'number-out-of-range' } })
  })

  it('brings its container size with it; without a price the product’s own size counts', () => {
    expect(good(containerOf(product, '2026-07-01', 'EUR'))).toBe(5)
    const bare = aProduct({ containerSize: { value: '20', unit: 'L' } })
    expect(good(containerOf(bare, '2026-07-01', 'EUR'))).toBe(20)
    expect(containerOf(aProduct(), '2026-07-01', 'EUR')).toMatchObject({
      problem: { needed: 'container-size' },
    })
  })
})
