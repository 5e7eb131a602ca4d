import { z } from 'zod'
import { estimate, money, or } from './worksheet-parts'

/** A month's use and money, as the worksheet and its what-ifs print them. */

export const use = z.strictObject({
  pumpId: z.string(),
  productId: z.string().nullable(),
  racksPerMonth: or(z.number()),
  doseFrom: z.enum(['as-left', 'target', 'none']),
  dose: or(estimate).describe('product per rack, mL'),
  litresPerMonth: or(estimate),
  parts: z
    .strictObject({ racks: z.number(), charges: z.number(), priming: z.number(), total: z.number() })
    .nullable()
    .describe('litres a month by where they go'),
  containersPerMonth: or(z.number()),
  costPerMonth: or(money).describe('rounded half-up to the minor unit'),
  costPerRack: or(money),
  costEstimate: or(estimate),
  assumptions: z.array(z.string()).describe('what was taken for granted because the record does not say it'),
})

export const totals = z.strictObject({
  costPerMonth: or(money).describe('the sum of the rounded lines'),
  costPerRack: or(money),
  racksPerMonth: or(z.number()),
  known: money.describe('the sum of the lines that could be costed'),
  unknownLines: z.number().describe('how many could not'),
})

const counted = z
  .strictObject({
    from: z.string(),
    to: z.string(),
    racks: z.number(),
    perOpenDay: z.number(),
    relativeStandard: z.number(),
  })
  .describe('what readings of the rack counter say')

export const machineRacks = z.strictObject({
  machineId: z.string(),
  rate: or(
    z.strictObject({
      from: z.enum(['stated', 'counter']),
      perOpenDay: z.number().describe('racks on an ordinary open day'),
      relativeStandard: z.number().describe('standard uncertainty over the value'),
      stated: z.number().nullable(),
      counted: counted.nullable(),
      gap: z.number().nullable().describe('counted over stated, less one'),
    }),
  ),
  racksPerMonth: or(z.number()),
})
