import { adviceSentences } from '#core/messages/advice-words'
import { doseFindings } from '#core/dose/dose-findings'
import { DECISION_HEADLINES, settlingWords } from '#core/messages/decision-words'
import { doseFindingSentence } from '#core/messages/dose-words'
import {
  nextVisitWords,
  outlookWords,
  rateWords,
  tubeAgeWords,
  tubeReasonWords,
  tubeVerdict,
} from '#core/messages/drift-words'
import { sentence } from '#core/messages/sentence'
import { seriesSentences } from '#core/messages/series-words'
import { tankSentences } from '#core/messages/tank-words'
import type { Instrument, Product, Site } from '#core/records/index'
import type { SiteSpend } from '#core/spend/site-spend'
import { formatEstimate, formatNumber } from '#core/units/format'
import { countedRuns } from '#core/worksheet/counted-runs'
import { pumpIn, setupOf } from '#core/worksheet/setup-of'
import type { PumpUse, PumpVisit, TestResult, VisitResult, Worksheet } from '#core/worksheet/types'
import { shelfLines } from './shelf-text'
import { money, said, shown, SIGN } from './text-parts'

type Names = readonly Pick<Instrument, 'id' | 'name'>[]

/** What a worksheet was worked out from, and what else is worked out from it. */
export interface TextRecords {
  readonly site: Site
  readonly products: readonly Product[]
  readonly instruments: readonly Instrument[]
  readonly spend: SiteSpend
}

/** A worksheet as text for people: the last visit pump by pump, what time does to each, the month, then the shelf. */
export function worksheetText(worksheet: Worksheet, records: TextRecords): string {
  const last = worksheet.visits.at(-1)
  const lines = [
    worksheet.siteName,
    '='.repeat(worksheet.siteName.length),
    `Worked out for ${worksheet.asOf}. ${worksheet.visits.length} visits on record.`,
    '',
    ...(last === undefined ? ['No visit yet.'] : visitLines(last, worksheet, records)),
    '',
    'An average month at the last known settings',
    ...worksheet.use.flatMap((use) => useLines(use, worksheet)),
    `  All together: ${said(worksheet.totals.costPerMonth, (cost) => money(cost, worksheet))} a month, ` +
      `${said(worksheet.totals.costPerRack, (cost) => `${cost.toFixed()} ${worksheet.currency}`)} a rack, ` +
      `${said(worksheet.totals.racksPerMonth, (racks) => formatNumber(racks, 4, SIGN))} racks`,
    ...shelfLines(records.spend, worksheet),
  ]
  return `${lines.join('\n')}\n`
}

function visitLines(visit: VisitResult, worksheet: Worksheet, records: TextRecords): readonly string[] {
  const record = records.site.visits.find((one) => one.id === visit.visitId)
  const setup = record === undefined ? records.site : setupOf(records.site, record, records)
  return [
    `Visit of ${visit.startedAt.slice(0, 10)} (${visit.closed ? 'closed' : 'open'}): ` +
      `${visit.inWindow} of ${visit.pumps.length} pumps in window`,
    ...visit.pumps.flatMap((pump) => [
      ...pumpLines(pump, records.instruments),
      ...under('dosing', dosingLines(pumpIn(setup, pump.pumpId))),
      ...under('tank', tankLines(pump, visit)),
      ...driftLines(pump, worksheet),
    ]),
  ]
}

/** What is odd about the seconds per rack, as on the bench. */
const dosingLines = (place: ReturnType<typeof pumpIn>): readonly string[] =>
  place === null
    ? []
    : doseFindings(place.pump, place.machine.rinse).map((finding) => doseFindingSentence(finding, SIGN))

const tankLines = ({ tank, pumpId }: PumpVisit, visit: VisitResult): readonly string[] =>
  tank === null
    ? []
    : tankSentences(tank, visit.setPoints.find((one) => one.pumpId === pumpId)?.setPoint ?? null, SIGN)

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

const three = (value: number): string => formatNumber(value, 3, SIGN)

function driftLines({ pumpId }: PumpVisit, worksheet: Worksheet): readonly string[] {
  const drift = worksheet.drift.find((one) => one.pumpId === pumpId)?.drift
  if (drift === undefined) return []
  return [
    ...under('with time', [
      rateWords(drift, (value) => formatNumber(value, 2, SIGN)),
      outlookWords(drift, three),
      ...(drift.nextVisit === null ? [] : [`Next visit ${nextVisitWords(drift.nextVisit)}`]),
    ]),
    ...under('tube', [
      `${tubeVerdict(drift.tube)}. ${tubeAgeWords(drift.tube)}`,
      ...drift.tube.reasons.map((reason) => tubeReasonWords(reason, three)),
    ]),
  ]
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
