import { z } from 'zod'
import { totals, use } from './use-schema'
import { estimate, money, or } from './worksheet-parts'

/** The spend part of what `worksheet --json` prints, field by field. */

const reorder = z.strictObject({
  productId: z.string(),
  stock: estimate.describe('L on the shelf today'),
  perDay: z.number().describe('L a day between order and delivery'),
  daysOfCover: z.number(),
  runsOutOn: z.string(),
  leadDays: z.number().describe('days from order to delivery'),
  safetyStock: z.number().describe('L'),
  reorderPoint: z.number().describe('order when this many L are left'),
  orderOn: z.string(),
  orderNow: z.boolean(),
  containers: z.number().int().describe('whole containers to order'),
  containerLitres: z.number(),
  cost: or(money).describe('of those containers at the price of the day'),
  cappedByShelfLife: z.boolean(),
  containerOutlastsShelfLife: z.boolean(),
})

const outlasting = z
  .strictObject({
    deliveredOn: z.string(),
    keepsUntil: z.string(),
    usedUpOn: z.string(),
    past: z.boolean().describe('it is past its time already'),
  })
  .describe('the oldest delivery on the shelf that is not used up while it keeps; null: all is')

const finding = z.discriminatedUnion('code', [
  z.strictObject({ code: z.literal('too-coarse'), containers: z.number().describe('emptied') }),
  z.strictObject({ code: z.literal('booking-error') }),
  z.strictObject({ code: z.literal('part-not-counted'), on: z.string() }),
  z.strictObject({
    code: z.literal('pump-explains'),
    drift: z.number().describe('found over left, less one'),
  }),
  z.strictObject({ code: z.literal('pump-does-not-explain'), drift: z.number() }),
  z.strictObject({ code: z.literal('racks-stated-only') }),
])

const reconciliation = z.strictObject({
  productId: z.string(),
  from: z.string().describe('day of the opening count'),
  to: z.string().describe('day of the closing count'),
  opening: or(estimate).describe('L'),
  closing: or(estimate).describe('L'),
  delivered: or(estimate).describe('L'),
  actual: or(estimate).describe('opening + delivered - closing, L'),
  theory: or(estimate).describe('what the pumps should have used, L'),
  variance: or(estimate).describe('actual - theory, L'),
  relative: z.number().nullable().describe('variance over theory'),
  z: z.number().nullable().describe('variance over its standard uncertainty'),
  verdict: or(z.enum(['agrees', 'used-more', 'used-less'])),
  findings: z.array(finding),
  reasons: z.array(z.string()).describe('most likely first'),
  next: z.string().describe('the check that separates pump from racks from counting'),
})

const month = z.strictObject({
  month: z.string(),
  kind: z.enum(['past', 'current', 'coming']),
  lines: z.array(z.strictObject({ productId: z.string(), litres: or(estimate), cost: or(money) })),
  cost: money.describe('the sum of the rounded lines that are known'),
  unknownLines: z.number(),
  costEstimate: or(estimate).describe('that sum with its interval'),
})

const visitSaving = z.strictObject({
  pumpId: z.string(),
  litresPerMonth: or(estimate).describe('positive: less is used than as found'),
  moneyPerMonth: or(estimate),
  visitId: z.string(),
  on: z.string(),
  productId: z.string().nullable(),
  heldDays: z.number().describe('days of the last year for which it held'),
  soFar: or(estimate).describe('money over those days'),
})

export const spend = z
  .strictObject({
    products: z.array(
      z.strictObject({
        productId: z.string(),
        name: z.string(),
        litresPerMonth: or(estimate),
        containersPerMonth: or(z.number()),
        costPerMonth: or(money).describe('the sum of its pumps’ rounded lines'),
        stock: or(estimate).describe('L on the shelf today'),
        reorder: or(reorder),
        outlasting: or(outlasting.nullable()),
        reconciliations: z.array(reconciliation).describe('count by count, oldest first'),
      }),
    ),
    months: z.array(month).describe('12 months back, this one, 12 to come'),
    visits: z.array(
      z.strictObject({
        visitId: z.string(),
        on: z.string(),
        atItsDay: or(money).describe('a month as the visit left it, at the prices of its day'),
        atToday: or(money).describe('the same at the prices of `asOf`'),
      }),
    ),
    savings: or(
      z.strictObject({
        from: z.string(),
        visits: z.array(visitSaving),
        total: or(estimate).describe('money over the last year'),
        unknown: z.number(),
      }),
    ),
    changes: or(
      z.strictObject({
        since: z.string(),
        before: money,
        now: money,
        steps: z.array(
          z.strictObject({ cause: z.enum(['racks', 'dose', 'price', 'product']), change: money }),
        ),
      }),
    ).describe('why a month costs more or less than a year ago; the steps add up'),
    scenarios: z.array(
      z.strictObject({
        scenarioId: z.string(),
        name: z.string(),
        lines: z.array(
          z.strictObject({
            pumpId: z.string(),
            productId: z.string().nullable(),
            today: use,
            changed: use,
            change: or(money).describe('changed - today, rounded lines'),
          }),
        ),
        today: totals,
        changed: totals,
        changePerMonth: or(money).describe('the sum of the lines'),
        changePerYear: or(money),
        change: or(estimate).describe('money a month'),
      }),
    ),
  })
  .optional()
