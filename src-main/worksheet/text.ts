import { sentence } from '#core/messages/sentence'
import type { Outcome } from '#core/outcome'
import type { Estimate, ResultUnit } from '#core/statistics/estimate'
import type { Decimal } from '#core/units/decimal'
import { formatEstimate, formatMoney, formatNumber } from '#core/units/format'
import type { PumpUse, PumpVisit, TestResult, VisitResult, Worksheet } from '#core/worksheet/types'

const SIGN = 'point'

const VERDICTS = {
  'proved-in': 'in window, proved',
  'in-not-proved': 'in window, not yet proved',
  'out-not-proved': 'outside, not yet proved',
  'proved-out': 'outside, proved',
  'not-tested': 'not tested',
  'cannot-tell': 'cannot tell',
} as const

/** A worksheet as text for people: the last visit pump by pump, then the month. */
export function worksheetText(worksheet: Worksheet): string {
  const last = worksheet.visits.at(-1)
  const lines = [
    worksheet.siteName,
    '='.repeat(worksheet.siteName.length),
    `Worked out for ${worksheet.asOf}. ${worksheet.visits.length} visits on record.`,
    '',
    ...(last === undefined ? ['No visit yet.'] : visitLines(last)),
    '',
    'An average month at the last known settings',
    ...worksheet.use.flatMap((use) => useLines(use, worksheet)),
    `  All together: ${said(worksheet.totals.costPerMonth, (cost) => money(cost, worksheet))} a month, ` +
      `${said(worksheet.totals.costPerRack, (cost) => `${cost.toFixed()} ${worksheet.currency}`)} a rack, ` +
      `${said(worksheet.totals.racksPerMonth, (racks) => formatNumber(racks, 4, SIGN))} racks`,
  ]
  return `${lines.join('\n')}\n`
}

function visitLines(visit: VisitResult): readonly string[] {
  return [
    `Visit of ${visit.startedAt.slice(0, 10)} (${visit.closed ? 'closed' : 'open'}): ` +
      `${visit.inWindow} of ${visit.pumps.length} pumps in window`,
    ...visit.pumps.flatMap(pumpLines),
  ]
}

const pumpLines = (pump: PumpVisit): readonly string[] => [
  `  ${pump.pumpName}, ${pump.productName ?? 'no product'}: ${VERDICTS[pump.state]}`,
  ...(pump.asFound === null ? [] : [`    as found  ${testLine(pump.asFound)}`]),
  ...(pump.asLeft === null || pump.asLeft === pump.asFound ? [] : [`    as left   ${testLine(pump.asLeft)}`]),
  ...(pump.advice === null ? [] : [`    next      ${adviceLine(pump)}`]),
  ...pump.missing.map((problem) => `    missing   ${sentence(problem)}`),
]

const shown = (one: Outcome<Estimate<ResultUnit>>): string =>
  said(one, (estimate) => formatEstimate(estimate, SIGN).whole)

const testLine = (test: TestResult): string =>
  [shown(test.flow), shown(test.dose), ...test.strengths.map(shown)].join('; ')

function adviceLine({ advice }: PumpVisit): string {
  if (advice === null) return ''
  switch (advice.kind) {
    case 'turn': {
      const way = advice.eighths > 0 ? 'clockwise' : 'anticlockwise'
      const back =
        advice.backOffEighths > 0
          ? `, backing off ${advice.backOffEighths} eighths further and coming up clockwise`
          : ''
      return `turn ${Math.abs(advice.eighths)} eighths ${way}${back}`
    }
    case 'leave':
      return `leave the screw (${advice.reason})`
    case 'diagnose':
    case 'confirm':
      return `look elsewhere before turning (${advice.finding})`
    case 'refuse':
      return `no turn advised yet (${advice.reasons.join(', ')})`
  }
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
