import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Product, Site } from '#core/records/index'
import { portfolioRow, type PortfolioRow } from '#core/spend/portfolio'
import { monthTotals, portfolioTotals, productTotals } from '#core/spend/portfolio-totals'
import { orderTotals, shoppingList } from '#core/spend/shopping-list'
import { siteSpend, type SiteSpend } from '#core/spend/site-spend'
import { Decimal } from '#core/units/decimal'
import { minorDigits } from '#core/units/money'
import { aMachine, aMovement, aProduct, aPump, aSetting, aSite, id } from './build'

/** Two digits, none and three: the minor units of ISO 4217 differ. */
const CURRENCIES = ['EUR', 'JPY', 'KWD'] as const
const PRODUCTS = 3

const products: readonly Product[] = Array.from({ length: PRODUCTS }, (_, n) =>
  aProduct({
    id: id(n + 1),
    name: `Product ${n + 1}`,
    leadTimeDays: '5',
    prices: CURRENCIES.map((currency) => ({
      from: '2025-01-01',
      currency,
      // a third of something: no line comes out even
      price: ((10 + 7 * n) / 3).toFixed(4),
      containerSize: { value: '10', unit: 'L' as const },
    })),
  }),
)

interface Draft {
  readonly currency: (typeof CURRENCIES)[number]
  readonly machines: readonly {
    readonly racks: number
    readonly pumps: readonly { readonly product: number; readonly flow: number; readonly tested: boolean }[]
  }[]
}

const drafts: fc.Arbitrary<readonly Draft[]> = fc.array(
  fc.record({
    currency: fc.constantFrom(...CURRENCIES),
    machines: fc.array(
      fc.record({
        racks: fc.integer({ min: 0, max: 2000 }),
        pumps: fc.array(
          fc.record({
            product: fc.integer({ min: 0, max: PRODUCTS - 1 }),
            flow: fc.double({ min: 0.1, max: 400, noNaN: true }),
            tested: fc.boolean(),
          }),
          { minLength: 1, maxLength: 3 },
        ),
      }),
      { maxLength: 3 },
    ),
  }),
  { maxLength: 6 },
)

function spendOf(draft: Draft, n: number): { readonly site: Site; readonly spend: SiteSpend } {
  const machines = draft.machines.map((machine, m) =>
    aMachine({
      id: id(1000 * (n + 1) + m),
      racksPerDay: String(machine.racks),
      pumps: machine.pumps.map((pump, p) =>
        aPump({ id: id(1000 * (n + 1) + 100 * (m + 1) + p), productId: id(pump.product + 1) }),
      ),
    }),
  )
  const site = aSite({
    id: id(900 + n),
    name: `Site ${n}`,
    currency: draft.currency,
    machines,
    stock: products.map((product) =>
      aMovement({ productId: product.id, on: '2026-03-01', part: { value: '1', unit: 'L' } }),
    ),
  })
  const doses = draft.machines.flatMap((machine, m) =>
    machine.pumps.flatMap((pump, p) => {
      const setting = aSetting(machines[m]?.pumps[p]?.id ?? '', pump.flow, 2)
      return pump.tested
        ? [
            {
              visitId: id(90),
              pumpId: setting.pumpId,
              on: '2025-02-01',
              found: setting.dose,
              left: setting.dose,
              flowLeft: setting.flow,
              changed: false,
              sameInstrument: true,
            },
          ]
        : []
    }),
  )
  return { site, spend: siteSpend({ site, products, asOf: '2026-03-15', serviceLevel: '95', doses }) }
}

const add = (amounts: readonly Decimal[]): Decimal =>
  amounts.reduce((sum, amount) => sum.plus(amount), new Decimal(0))
const isPaid = (amount: Decimal, currency: string): boolean => amount.decimalPlaces() <= minorDigits(currency)
const facts = { outOfWindow: 0, notTested: 0, nextVisitOn: null, overdueTubes: [] }

describe('money adds up to the cent', () => {
  it('on the page of a site: pumps, products and months, in every currency', () => {
    fc.assert(
      fc.property(drafts, (all) => {
        for (const [n, draft] of all.entries()) {
          const { spend } = spendOf(draft, n)
          const lines = spend.use.flatMap((line) => (line.costPerMonth.ok ? [line.costPerMonth.value] : []))
          for (const line of lines) expect(isPaid(line, draft.currency)).toBe(true)
          expect(add(lines).equals(spend.totals.known)).toBe(true)
          if (spend.totals.costPerMonth.ok)
            expect(spend.totals.costPerMonth.value.equals(add(lines))).toBe(true)
          else expect(spend.totals.unknownLines).toBeGreaterThan(0)
          const known = spend.products.flatMap((one) => (one.costPerMonth.ok ? [one.costPerMonth.value] : []))
          if (spend.totals.unknownLines === 0) expect(add(known).equals(add(lines))).toBe(true)
          for (const month of spend.months) {
            const parts = month.lines.flatMap((line) => (line.cost.ok ? [line.cost.value] : []))
            expect(add(parts).equals(month.cost)).toBe(true)
            for (const part of parts) expect(isPaid(part, draft.currency)).toBe(true)
          }
        }
      }),
      { numRuns: 40 },
    )
  }, 120_000)

  it('on the page of all sites: rows, currencies, products, months and orders', () => {
    fc.assert(
      fc.property(drafts, (all) => {
        const rows: readonly PortfolioRow[] = all.map((draft, n) => {
          const { site, spend } = spendOf(draft, n)
          return portfolioRow(site, spend, facts)
        })
        for (const total of portfolioTotals(rows)) {
          const own = rows.filter((row) => row.currency === total.currency)
          expect(add(own.map((row) => row.cost)).equals(total.cost)).toBe(true)
          expect(isPaid(total.cost, total.currency)).toBe(true)
          const byProduct = productTotals(rows).filter((product) => product.currency === total.currency)
          if (total.unknownLines === 0)
            expect(add(byProduct.map((product) => product.cost)).equals(total.cost)).toBe(true)
          for (const month of monthTotals(rows, total.currency))
            expect(
              add(
                own.flatMap((row) =>
                  row.months.flatMap((one) => (one.month === month.month ? [one.cost] : [])),
                ),
              ).equals(month.cost),
            ).toBe(true)
        }
        for (const product of productTotals(rows)) {
          const own = rows
            .filter((row) => row.currency === product.currency)
            .flatMap((row) => row.products.filter((one) => one.productId === product.productId))
          expect(add(own.flatMap((one) => one.cost ?? [])).equals(product.cost)).toBe(true)
        }
        const groups = shoppingList(rows, '2100-01-01')
        for (const total of orderTotals(groups)) {
          const own = groups.filter((group) => group.currency === total.currency)
          expect(add(own.map((group) => group.cost)).equals(total.cost)).toBe(true)
        }
        for (const group of groups) {
          const costs = group.lines.flatMap((line) => (line.reorder.cost.ok ? [line.reorder.cost.value] : []))
          expect(add(costs).equals(group.cost)).toBe(true)
          expect(group.lines.every((line) => line.currency === group.currency)).toBe(true)
        }
      }),
      { numRuns: 30 },
    )
  }, 120_000)

  it('and money of two currencies is never put into one sum', () => {
    const two = (['EUR', 'JPY'] as const).map((currency, n) => {
      const draft = { currency, machines: [{ racks: 100, pumps: [{ product: 0, flow: 30, tested: true }] }] }
      const { site, spend } = spendOf(draft, n)
      return portfolioRow(site, spend, facts)
    })
    expect(portfolioTotals(two).map((total) => total.currency)).toEqual(['EUR', 'JPY'])
    // 100 racks x 30.4375 days x 1 mL = 3.04375 L at 3.3333 / 10 a litre: 1.01 of one, 1 of the other
    expect(portfolioTotals(two).map((total) => total.cost.toString())).toEqual(['1.01', '1'])
  })
})
