import { describe, expect, it } from 'vitest'
import {
  lastsWords,
  orderByWords,
  orderLimitWords,
  outlastingWords,
  shelfState,
} from '#core/messages/order-words'
import { fail } from '#core/outcome'
import { estimate } from '#core/statistics/make-estimate'
import type { Reorder } from '#core/spend/reorder'
import { good } from '#tests/support/outcomes'

const order = (over: Partial<Reorder> = {}): Reorder => ({
  productId: 'p',
  stock: good(estimate(12, 'L', [])),
  perDay: 1,
  daysOfCover: 12.4,
  runsOutOn: '2026-03-21',
  leadDays: 5,
  safetyStock: 1,
  reorderPoint: 6,
  orderOn: '2026-03-15',
  orderNow: false,
  containers: 2,
  containerLitres: 10,
  cost: fail({ code: 'no-runs' }),
  cappedByShelfLife: false,
  containerOutlastsShelfLife: false,
  ...over,
})

describe('what is said of a shelf', () => {
  it('a stock that ends before a delivery could come is worse than one to order now', () => {
    expect(shelfState(order(), null).tone).toBe('good')
    expect(shelfState(order({ orderNow: true }), null)).toEqual({ tone: 'warn', word: 'Order now' })
    expect(shelfState(order({ orderNow: true, daysOfCover: 5 }), null).word).toBe(
      'Runs out before a delivery',
    )
  })

  it('a shelf with product past its time is not simply enough, but an order comes first', () => {
    const lot = { deliveredOn: '2026-01-01', keepsUntil: '2026-02-01', usedUpOn: '2026-04-01' }
    expect(shelfState(order(), { ...lot, past: true })).toEqual({
      tone: 'warn',
      word: 'Some is past its time',
    })
    expect(shelfState(order(), { ...lot, past: false }).word).toBe('Enough')
    expect(shelfState(order({ orderNow: true }), { ...lot, past: true }).word).toBe('Order now')
  })

  it('names days as people write them, and whole days', () => {
    expect(orderByWords(order())).toBe('Order by 15 Mar 2026')
    expect(lastsWords(order())).toEqual(['12 days', 'to 21 Mar 2026'])
    expect(lastsWords(order({ daysOfCover: 1.2 }))[0]).toBe('1 day')
    expect(lastsWords(order({ daysOfCover: 0.4 }))[0]).toBe('used up')
  })

  it('says when shelf life, not need, sets the number', () => {
    expect(orderLimitWords(order())).toBeNull()
    expect(orderLimitWords(order({ cappedByShelfLife: true }))).toMatch(/Fewer than wanted/u)
    expect(orderLimitWords(order({ cappedByShelfLife: true, containerOutlastsShelfLife: true }))).toMatch(
      /smaller size/u,
    )
    const lot = { deliveredOn: '2026-01-01', keepsUntil: '2026-02-01', usedUpOn: '2026-04-01' }
    expect(outlastingWords({ ...lot, past: true })).toMatch(/is not used up\. Test its strength/u)
    expect(outlastingWords({ ...lot, past: false })).toMatch(/lasts to 1 Apr 2026/u)
  })
})
