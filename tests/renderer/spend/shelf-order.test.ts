import { describe, expect, it } from 'vitest'
import { fail, ok } from '#core/outcome'
import type { Reorder } from '#core/spend/reorder'
import { estimate } from '#core/statistics/make-estimate'
import { mostPressingFirst } from '#renderer/screens/spend/shelf-order.ts'
import { good } from '#tests/support/outcomes'

const enough: Reorder = {
  productId: 'p',
  stock: good(estimate(12, 'L', [])),
  perDay: 1,
  daysOfCover: 60,
  runsOutOn: '2026-05-10',
  leadDays: 5,
  safetyStock: 1,
  reorderPoint: 6,
  orderOn: '2026-05-04',
  orderNow: false,
  containers: 2,
  containerLitres: 10,
  cost: fail({ code: 'no-runs' }),
  cappedByShelfLife: false,
  containerOutlastsShelfLife: false,
}
const shelf = (name: string, over: Partial<Reorder>) => ({
  name,
  reorder: ok({ ...enough, ...over }),
  outlasting: ok(null),
})

describe('the order of the shelf', () => {
  it('begins with what runs out, then what to order, then what cannot be told, and ends with what is enough', () => {
    const found = mostPressingFirst([
      shelf('rinse aid', {}),
      { name: 'never counted', reorder: fail({ code: 'no-runs' } as const), outlasting: ok(null) },
      shelf('sanitizer', { orderNow: true }),
      shelf('detergent', { orderNow: true, daysOfCover: 0 }),
      shelf('glass detergent', {}),
    ])
    expect(found.map(({ name }) => name)).toEqual([
      'detergent',
      'sanitizer',
      'never counted',
      'rinse aid',
      'glass detergent',
    ])
  })
})
