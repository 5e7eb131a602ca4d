import { describe, expect, it } from 'vitest'
import { attentionOf, type AttentionInput } from '#core/spend/attention'
import { steadyUse } from '#core/spend/ahead'
import { reorder, type Reorder } from '#core/spend/reorder'
import { estimate } from '#core/statistics/make-estimate'
import { aProduct, good, id } from './build'

const quiet: AttentionInput = {
  asOf: '2026-03-10',
  outOfWindow: 0,
  notTested: 0,
  nextVisitOn: '2026-03-10',
  overdueTubes: [],
  reorders: [],
  reconciliations: [],
  outlasting: [],
  unknownLines: 0,
}
/** 1 L a day, four days from order to delivery: the reorder point is between 5 and 6 L. */
const left = (litres: number): Reorder =>
  good(
    reorder({
      product: aProduct({
        leadTimeDays: '4',
        shelfLifeDays: null,
        containerSize: { value: '10', unit: 'L' },
      }),
      currency: 'EUR',
      asOf: '2026-03-10',
      stock: estimate(litres, 'L', []),
      perMonth: estimate(30.4375, 'L/month', []),
      serviceLevel: '95',
      coverDays: 30,
      ahead: steadyUse(1),
    }),
  )
const codes = (over: Partial<AttentionInput>): readonly string[] =>
  attentionOf({ ...quiet, ...over }).map((reason) => reason.code)

describe('what needs attention at a site', () => {
  it('is nothing while pumps are in window, the shelf holds and the next visit is today or later', () => {
    expect(codes({ reorders: [left(40)] })).toEqual([])
  })

  it('is running out when the shelf is empty before an order of today arrives, and an order otherwise', () => {
    expect(attentionOf({ ...quiet, reorders: [left(3.5)] })).toEqual([
      { code: 'running-out', productId: id(1), days: 3, runsOutOn: '2026-03-13' },
    ])
    expect(codes({ reorders: [left(4)] })).toEqual(['running-out'])
    expect(codes({ reorders: [left(5)] })).toEqual(['order-now'])
  })

  it('is a visit from the day after it was due, with the days it is late', () => {
    expect(attentionOf({ ...quiet, nextVisitOn: '2026-03-09' })).toEqual([{ code: 'visit-overdue', days: 1 }])
    expect(codes({ nextVisitOn: null })).toEqual([])
  })

  it('is tubes over their time: how many, and by how many days the worst of them', () => {
    expect(attentionOf({ ...quiet, overdueTubes: [12, 40] })).toEqual([
      { code: 'tubes-overdue', tubes: 2, days: 40 },
    ])
  })

  it('is product past its shelf life, but not one that only will be', () => {
    const lot = {
      productId: id(1),
      deliveredOn: '2026-01-01',
      keepsUntil: '2026-03-01',
      usedUpOn: '2026-04-01',
    }
    expect(codes({ outlasting: [{ ...lot, past: true }] })).toEqual(['past-its-time'])
    expect(codes({ outlasting: [{ ...lot, past: false }] })).toEqual([])
  })

  it('is told with the most urgent first', () => {
    expect(
      codes({
        outOfWindow: 1,
        notTested: 2,
        unknownLines: 2,
        nextVisitOn: '2026-01-01',
        reorders: [left(5), left(1)],
      }),
    ).toEqual(['out-of-window', 'running-out', 'visit-overdue', 'order-now', 'not-tested', 'cost-unknown'])
  })
})
