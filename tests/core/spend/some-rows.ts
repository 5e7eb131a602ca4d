import * as fc from 'fast-check'
import type { AttentionReason } from '#core/spend/attention'
import type { PortfolioRow } from '#core/spend/portfolio'
import { Decimal } from '#core/units/decimal'
import { id } from './build'

const REASONS: readonly AttentionReason[] = [
  { code: 'out-of-window', pumps: 1 },
  { code: 'visit-overdue', days: 3 },
  { code: 'tubes-overdue', tubes: 1, days: 9 },
  { code: 'cost-unknown', lines: 2 },
]
const cents = fc.integer({ min: 0, max: 5_000_000 }).map((n) => new Decimal(n).div(100))
const known = <T>(of: fc.Arbitrary<T>): fc.Arbitrary<T | null> => fc.option(of, { freq: 4 })

const product = fc.record({
  at: fc.integer({ min: 1, max: 6 }),
  litres: known(fc.double({ min: 0, max: 900, noNaN: true })),
  containers: known(fc.integer({ min: 0, max: 90 })),
  cost: known(cents),
  orderIn: known(fc.integer({ min: 0, max: 60 })),
})

/** Rows of a portfolio as various as they can be, each with an id of its own. */
export const someRows: fc.Arbitrary<readonly PortfolioRow[]> = fc
  .array(
    fc.record({
      name: fc.constantFrom('Site 2', 'Site 10', 'café Nord', 'Cafe Süd', 'École', 'zoo', '', 'Site 2'),
      currency: fc.constantFrom('EUR', 'USD', 'JPY'),
      cost: cents,
      unknownLines: fc.integer({ min: 0, max: 2 }),
      costPerRack: known(cents),
      racks: known(fc.integer({ min: 0, max: 9000 })),
      saved: known(fc.double({ min: 0, max: 900, noNaN: true })),
      attention: fc.subarray([...REASONS]),
      products: fc.array(product, { maxLength: 4 }),
      months: fc.array(cents, { maxLength: 3 }),
    }),
    { maxLength: 40 },
  )
  .map((drafts) =>
    drafts.map(({ products, months, saved, ...draft }, n) => ({
      ...draft,
      siteId: id(n + 100),
      asOf: '2026-05-04',
      timeZone: 'Europe/Berlin',
      saved: saved === null ? null : { value: saved, low: saved, high: saved },
      litres: products.reduce((sum, one) => sum + (one.litres ?? 0), 0),
      products: products.map(({ at, orderIn, ...one }) => ({
        ...one,
        productId: id(at),
        name: `Product ${at}`,
        reorder:
          orderIn === null
            ? null
            : {
                productId: id(at),
                containers: 2,
                containerLitres: 5 + (at % 2) * 5,
                cost:
                  one.cost === null
                    ? { ok: false as const, problem: { code: 'not-found' as const, what: 'price' } }
                    : { ok: true as const, value: one.cost },
                daysOfCover: orderIn / 2,
                leadDays: 4,
                perDay: 1,
                safetyStock: 1,
                reorderPoint: 5,
                cappedByShelfLife: false,
                containerOutlastsShelfLife: false,
                orderNow: orderIn === 0,
                orderOn: `2026-06-${String(1 + (orderIn % 28)).padStart(2, '0')}`,
                runsOutOn: '2026-07-30',
              },
      })),
      months: months.map((cost, at) => ({ month: `2026-0${at + 1}`, cost, unknownLines: at })),
    })),
  )
