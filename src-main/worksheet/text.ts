import { adviceSentences } from '#core/messages/advice-words'
import { DECISION_HEADLINES, settlingWords } from '#core/messages/decision-words'
import { leavingWords, nextVisitWords, rateWords } from '#core/messages/drift-words'
import { sentence } from '#core/messages/sentence'
import { seriesSentences } from '#core/messages/series-words'
import type { Outcome } from '#core/outcome'
import type { Instrument } from '#core/records/index'
import type { Estimate, ResultUnit } from '#core/statistics/estimate'
import type { Decimal } from '#core/units/decimal'
import { formatEstimate, formatMoney, formatNumber } from '#core/units/format'
import { countedRuns } from '#core/worksheet/counted-runs'
import type { PumpUse, PumpVisit, TestResult, VisitResult, Worksheet } from '#core/worksheet/types'

const SIGN = 'point'

type Names = readonly Pick<Instrument, 'id' | 'name'>[]

/** A worksheet as text for people: the last visit pump by pump, what time does to each, then the month. */
export function worksheetText(worksheet: Worksheet, instruments: Names): string {
  const last = worksheet.visits.at(-1)
  const lines = [
    worksheet.siteName,
    '='.repeat(worksheet.siteName.length),
    `Worked out for ${worksheet.asOf}. ${worksheet.visits.length} visits on record.`,
    '',
    ...(last === undefined ? ['No visit yet.'] : visitLines(last, worksheet, instruments)),
    '',
    'An average month at the last known settings',
    ...worksheet.use.flatMap((use) => useLines(use, worksheet)),
    `  All together: ${said(worksheet.totals.costPerMonth, (cost) => money(cost, worksheet))} a month, ` +
      `${said(worksheet.totals.costPerRack, (cost) => `${cost.toFixed()} ${worksheet.currency}`)} a rack, ` +
      `${said(worksheet.totals.racksPerMonth, (racks) => formatNumber(racks, 4, SIGN))} racks`,
  ]
  return `${lines.join('\n')}\n`
}

function visitLines(visit: VisitResult, worksheet: Worksheet, instruments: Names): readonly string[] {
  return [
    `Visit of ${visit.startedAt.slice(0, 10)} (${visit.closed ? 'closed' : 'open'}): ` +
      `${visit.inWindow} of ${visit.pumps.length} pumps in window`,
    ...visit.pumps.flatMap((pump) => [...pumpLines(pump, instruments), ...driftLines(pump, worksheet)]),
  ]
}

/** Lines under one word: the word before the first, the others below it. */
const under = (word: string, texts: readonly string[]): readonly string[] =>
  texts.map((text, i) => `    ${(i === 0 ? word : '').padEnd(9)} ${text}`)

const pumpLines = (pump: PumpVisit, instruments: Names): readonly string[] => [
  `  ${pump.pumpName}, ${pump.productName ?? 'no product'}`,
  ...(pump.asFound === null ? under('state', ['Not tested.']) : under('as found', testLines(pump.asFound))),
  ...(pump.asLeft === null || pump.asLeft === pump.asFound ? [] : under('as left', testLines(pump.asLeft))),
  ...(pump.asLeft === null ? [] : under('to settle', settlingLines(pump.asLeft, instruments))),
  ...(pump.advice === null ? [] : under('next', adviceSentences(pump.advice, SIGN))),
  ...under('missing', pump.missing.map(sentence)),
]

const shown = (one: Outcome<Estimate<ResultUnit>>): string =>
  said(one, (estimate) => formatEstimate(estimate, SIGN).whole)

const testLines = (test: TestResult): readonly string[] => [
  [shown(test.flow), shown(test.dose), ...test.strengths.map(shown)].join('; '),
  `${said(test.decision, (decision) => DECISION_HEADLINES[decision.verdict](decision))}.`,
  ...seriesSentences(
    test.quality,
    countedRuns(test),
    SIGN,
    (runId) => test.runs.findIndex((run) => run.runId === runId) + 1,
  ).map((line) => line.text),
]

function settlingLines({ decision }: TestResult, instruments: Names): readonly string[] {
  const step = decision.ok ? settlingWords(decision.value.settle, instruments) : null
  return step === null ? [] : [step]
}

function driftLines({ pumpId }: PumpVisit, worksheet: Worksheet): readonly string[] {
  const drift = worksheet.drift.find((one) => one.pumpId === pumpId)?.drift
  if (drift === undefined) return []
  return under('with time', [
    rateWords(drift, (value) => formatNumber(value, 2, SIGN)),
    ...(drift.leaving.ok ? [leavingWords(drift.leaving.value)] : []),
    ...(drift.nextVisit === null ? [] : [`Next visit ${nextVisitWords(drift.nextVisit)}`]),
  ])
}

const useLines = (use: PumpUse, worksheet: Worksheet): readonly string[] => {
  const name =
    worksheet.visits.at(-1)?.pumps.find((pump) => pump.pumpId === use.pumpId)?.pumpName ?? use.pumpId
  return [
    `  ${name}: ${said(use.litresPerMonth, (litres) => formatEstimate(litres, SIGN).whole)}, ` +
      `${said(use.containersPerMonth, (count) => formatNumber(count, 3, SIGN))} containers, ` +
      said(use.costPerMonth, (cost) => money(cost, worksheet)),
  ]
}

const money = (amount: Decimal, worksheet: Worksheet): string => formatMoney(amount, worksheet.currency, SIGN)

const said = <T>(outcome: Outcome<T>, show: (value: T) => string): string =>
  outcome.ok ? show(outcome.value) : `[${sentence(outcome.problem)}]`
