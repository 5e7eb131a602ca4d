import { z } from 'zod'
import { glassResults } from './glass-results-schema'
import { spend } from './spend-schema'
import { machineRacks, totals, use } from './use-schema'
import { estimate, or, problem } from './worksheet-parts'

/**
 * What `worksheet --json` prints, field by field. The descriptions travel into the published JSON Schema.
 */

const verdict = z.enum(['proved-in', 'in-not-proved', 'out-not-proved', 'proved-out'])

const finding = z.looseObject({ code: z.string(), severity: z.enum(['stops', 'warns']) })

const test = z.strictObject({
  testId: z.string(),
  at: z.string(),
  method: z.enum(['draw-down', 'catch', 'weighed']),
  eighths: z
    .number()
    .describe('net eighths of a turn since the witness mark of the visit, clockwise positive'),
  runs: z.array(
    z.strictObject({
      runId: z.string(),
      volume: or(z.number()).describe('mL, corrected for an immersed tube'),
      seconds: or(z.number()).describe('s'),
      flow: or(z.number()).describe('mL/min'),
      excluded: z.string().nullable().describe('why the run does not count; null when it does'),
    }),
  ),
  quality: z.strictObject({
    findings: z.array(finding).describe('what the series gives away about itself'),
    mean: z.number().nullable().describe('mL/min'),
    standardDeviation: z.number().nullable().describe('mL/min'),
    cv: z.number().nullable().describe('standardDeviation over mean'),
  }),
  flow: or(estimate).describe('mL/min'),
  dose: or(estimate).describe('mL/rack'),
  strengths: z.array(or(estimate)).describe('every concentration the inputs allow; the unit names the basis'),
  decision: or(
    z.strictObject({
      verdict,
      basis: z.string(),
      value: estimate,
      low: z.number(),
      target: z.number(),
      high: z.number(),
      settle: z
        .looseObject({ kind: z.string() })
        .nullable()
        .describe('the cheapest step that would settle it'),
    }),
  ),
})

const pumpVisit = z.strictObject({
  pumpId: z.string(),
  pumpName: z.string(),
  role: z.string(),
  productId: z.string().nullable(),
  productName: z.string().nullable(),
  tests: z.array(test),
  asFound: test.nullable().describe('the first test of the visit'),
  asLeft: test.nullable().describe('the last test of the visit'),
  state: z.union([verdict, z.enum(['not-tested', 'cannot-tell'])]),
  missing: z.array(problem).describe('what still stands between this pump and an answer'),
  advice: z
    .looseObject({ kind: z.enum(['turn', 'leave', 'diagnose', 'confirm', 'refuse']) })
    .nullable()
    .describe('the next turn, or why none; null once the visit is closed'),
  verifications: z
    .array(z.looseObject({ verificationId: z.string() }))
    .describe('chemical checks against what the last flow test predicts'),
  tank: z
    .strictObject({
      model: or(z.looseObject({ kind: z.string() })),
      window: or(z.looseObject({})).describe('g/L'),
      settlesAt: or(estimate).describe('g/L the setting heads for'),
      swing: or(z.strictObject({ peak: z.number(), trough: z.number() }))
        .nullable()
        .describe('g/L, fed all at once: highest and lowest of every rack once settled; null with the rinse'),
      recharge: or(estimate).describe('pump seconds per rack that would hold the target'),
      initialCharge: or(estimate).describe('pump seconds after a fresh fill that would start on the target'),
      timeConstant: or(z.number()).describe('racks in which a difference falls to 1/e'),
      timeConstants: or(z.array(z.number())).describe(
        'the ones the wait is made of: one, or both of two tanks',
      ),
      racksBeforeTest: or(z.number()).describe('racks to run before a tank test means anything'),
      service: or(z.looseObject({})).describe('strength over a service, summed up'),
      notes: z.array(z.looseObject({ code: z.string() })),
      arriving: or(estimate)
        .nullable()
        .describe('g/L that comes over from a second tank with the same product; null where nothing does'),
      other: z
        .strictObject({
          which: z.enum(['wash-tank', 'upstream-tank']),
          volume: or(z.number()).describe('L'),
          fedBy: z.strictObject({ pumpId: z.string(), name: z.string() }).nullable(),
          window: or(z.looseObject({}))
            .nullable()
            .describe('g/L; null: nothing of this product has to be in it'),
          settlesAt: or(z.number()).describe('g/L'),
          service: or(z.looseObject({})).describe('strength over a service, summed up'),
          chargeByHand: or(estimate)
            .nullable()
            .describe('mL into a fresh fill by hand; null where a pump does it or nothing is needed'),
          racksBeforeTest: or(z.number()),
          grams: z
            .strictObject({
              fed: z.number(),
              overflowed: z.number(),
              drained: z.number(),
              left: z.number(),
            })
            .nullable()
            .describe('product over the service in both tanks, g: fed = overflowed + drained + left'),
        })
        .nullable()
        .describe('the other tank of a machine with two; null with one'),
    })
    .nullable()
    .describe('the wash this pump feeds; null for the final rinse'),
  booster: z
    .strictObject({
      volume: or(z.number()).describe('L'),
      racksBeforeTest: or(z.number()).describe(
        'racks to run after a change before rinse or glasses tell of it',
      ),
      change: or(
        z.strictObject({
          before: z.number(),
          after: z.number(),
          strengths: z.array(z.strictObject({ rack: z.number(), strength: z.number() })),
        }),
      )
        .nullable()
        .describe(
          'ppm by volume as it leaves the booster after the last change of the visit; null without one',
        ),
    })
    .nullable()
    .describe('the heater before the final rinse; null for a pump that feeds a tank'),
})

const setPoint = z.strictObject({
  pumpId: z.string(),
  setPoint: or(
    z.strictObject({
      low: z.number(),
      target: z.number(),
      high: z.number(),
      perGram: z.number().describe('what one g/L of product adds, by the last conductivity check'),
      water: z.number().describe('what the plain water reads, by the same check'),
    }),
  ).describe('uS/cm at 25 degC'),
})

const saving = z.strictObject({
  pumpId: z.string(),
  litresPerMonth: or(estimate).describe('positive: less is used than as found'),
  moneyPerMonth: or(estimate),
})

export const worksheetFile = z.strictObject({
  format: z.literal('dosewright-worksheet'),
  version: z.literal(1),
  siteId: z.string(),
  siteName: z.string(),
  currency: z.string(),
  asOf: z.string().describe('the day whose prices and calendar count'),
  visits: z.array(
    z.strictObject({
      visitId: z.string(),
      startedAt: z.string(),
      closed: z.boolean(),
      pumps: z.array(pumpVisit),
      inWindow: z.number().describe('pumps in the window, proved or not'),
      tested: z.number(),
      saving: z.array(saving).describe('pumps whose flow was changed in this visit'),
      setPoints: z
        .array(setPoint)
        .describe('what the controllers of probe-controlled tanks are to be set to'),
    }),
  ),
  use: z.array(use).describe('the average month, pump by pump, at the last known settings'),
  racks: z.array(machineRacks).describe('how the racks of each machine are known'),
  spend: spend.describe('months, stock, orders, savings and what-ifs'),
  glass: glassResults.describe('why glasses spot, check by check'),
  totals,
  drift: z
    .array(z.strictObject({ pumpId: z.string(), drift: z.looseObject({}) }))
    .describe('what time does to each pump: wear of its tube, the day it leaves its window, the next visit'),
})

export type WorksheetFile = z.output<typeof worksheetFile>

/** The worksheet's format as JSON Schema (draft 2020-12), for other programs. */
export const worksheetJsonSchema = (): Readonly<Record<string, unknown>> => ({
  ...z.toJSONSchema(worksheetFile, { target: 'draft-2020-12', reused: 'ref' }),
  title: 'Dosewright worksheet, version 1',
})
