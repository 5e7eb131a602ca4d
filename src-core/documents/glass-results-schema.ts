import { z } from 'zod'
import { or } from './worksheet-parts'

const cause = z.string().describe('one of the 13 causes')

/** Glass checks in the worksheet, field by field. */
export const glassResults = z.array(
  z.strictObject({
    checkId: z.string(),
    at: z.string(),
    machineId: z.string().nullable(),
    findings: z
      .array(
        z.strictObject({
          evidence: z.string(),
          answer: z.enum(['yes', 'no', 'unknown']),
          from: z.enum(['operator', 'record']),
        }),
      )
      .describe('what was answered, and what visits and the site record say without asking'),
    known: z.array(
      z.strictObject({
        kind: z.string(),
        value: z.number().nullable(),
        on: z.string().nullable(),
        daysOld: z.number().nullable(),
        trusted: z.boolean().describe('false: too old for its kind, told and not counted'),
      }),
    ),
    causes: z
      .array(
        z.strictObject({
          cause,
          score: z.number().describe('ln(prior) + weights, natural-log units; weights are judgement'),
          share: z.number().describe('softmax of the scores: a ranking aid, not a probability of truth'),
          reasons: z.array(
            z.strictObject({
              kind: z.enum(['seen', 'not-seen', 'had-before', 'tried-in-vain']),
              evidence: z.array(z.string()),
              weight: z.number().describe('natural-log units; positive speaks for the cause'),
            }),
          ),
        }),
      )
      .describe('all causes, the likeliest first'),
    separated: z
      .boolean()
      .describe('false: the first two differ by less than 1.0, so they cannot be told apart yet'),
    open: z.array(cause).describe('causes that cannot be told from the first, the first included'),
    together: z.array(cause).describe('causes that may be at work beside the first'),
    next: z
      .array(
        z.strictObject({
          test: z.string(),
          gain: z.number().describe('expected information, bits'),
          gainPerEffort: z.number(),
          rise: z.number().describe('expected rise of the chance that the true cause is first or second'),
        }),
      )
      .describe('tests worth asking, the best first'),
    testsAsked: z.number(),
    enough: z.boolean(),
    cured: cause.nullable().describe('the cure that helped'),
    confirmedCause: z.string().nullable().describe('what the rep found it to be'),
    residue: or(
      z.strictObject({
        before: z.number().describe('mg dried on one glass now'),
        after: z.number().describe('mg with the cure'),
        by: z.enum(['less-water', 'purer-water']),
      }),
    )
      .nullable()
      .describe('an estimate for comparing; held volumes are assumed'),
  }),
)
