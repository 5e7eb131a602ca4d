import { z } from 'zod'

export const problem = z
  .strictObject({
    problem: z.string().describe('code of what stands in the way'),
    says: z.string().describe('the same as a sentence'),
  })
  .describe('stands where a figure cannot be given, with the reason')

export const or = <T extends z.ZodType>(value: T) => z.union([value, problem])

export const estimate = z
  .strictObject({
    unit: z.string().describe('unit of value, standard, expanded, low and high'),
    value: z.number(),
    standard: z.number().min(0).describe('combined standard uncertainty'),
    coverage: z.number().describe('coverage factor for 95 %'),
    expanded: z.number().min(0).describe('coverage x standard: half-width of the 95 % interval'),
    low: z.number(),
    high: z.number(),
    degreesOfFreedom: z
      .number()
      .nullable()
      .describe('effective (Welch-Satterthwaite); null: infinitely many'),
    predicted: z.boolean().describe('true: a forecast from the instruments, no scatter was observed'),
    budget: z
      .array(
        z.strictObject({
          source: z.string(),
          standard: z.number(),
          degreesOfFreedom: z.number().nullable(),
          share: z.number().describe('part of the combined variance'),
          sign: z.literal(-1).optional().describe('the result falls as this source rises'),
        }),
      )
      .describe('where the uncertainty comes from'),
  })
  .describe('a result and how well it is known')

export const money = z.string().describe('decimal text in the currency of the site')
