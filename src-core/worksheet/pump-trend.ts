import { doseContext } from '../dose/on-basis'
import { requiredFlow } from '../dose/required-flow'
import { pumpHistory, type HistoryVisit } from '../drift/history'
import { pumpDrift } from '../drift/pump-drift'
import type { PumpDrift } from '../drift/types'
import { fail, ok, type Outcome } from '../outcome'
import type { Day, Id, Pump, Site } from '../records'
import { DAYS_PER_MONTH } from '../spend/calendar'
import { readNumber } from '../units/read'
import { pumpIn, setupOf, type Library } from './setup-of'
import { isTrusted, trendVisit, type Band, type Row, type TrendVisit } from './trend-visit'
import type { PumpVisit, Worksheet } from './types'

export interface TrendMark {
  readonly kind: 'tube' | 'product'
  readonly day: Day
  /** name of the product from then on; null for a tube or where it has none */
  readonly product: string | null
}

/** One pump across all visits, and what time does to it. */
export interface PumpTrend {
  readonly pumpId: Id
  readonly visits: readonly TrendVisit[]
  readonly marks: readonly TrendMark[]
  /** edges of today's window, mL/min */
  readonly window: Outcome<Band>
  readonly drift: PumpDrift
}

/** The trend of a pump of today's set-up. Problems: `not-found` for a pump that is not there. */
export function pumpTrend(
  site: Site,
  worksheet: Pick<Worksheet, 'visits' | 'racks' | 'asOf'>,
  library: Library,
  pumpId: Id,
): Outcome<PumpTrend> {
  const place = pumpIn(site, pumpId)
  if (place === null) return fail({ code: 'not-found', what: 'pump' })
  const rows = worksheet.visits.flatMap((result) => {
    const visit = site.visits.find((one) => one.id === result.visitId)
    const worked = result.pumps.find((one) => one.pumpId === pumpId)
    if (visit === undefined || worked === undefined) return []
    return [{ visit, worked, setup: setupOf(site, visit, library) }]
  })
  const product = library.products.find((one) => one.id === place.pump.productId) ?? null
  const history = pumpHistory(rows.map(historyVisit))
  const window = requiredFlow(place.pump, doseContext(place.machine, product, place.pump))
  const racks = worksheet.racks.find((row) => row.machineId === place.machine.id)?.racksPerMonth
  const last = rows.findLast(({ worked }) => worked.asLeft !== null)?.worked ?? null
  return ok({
    pumpId,
    visits: rows.flatMap(trendVisit),
    marks: [
      ...history.flatMap((event): readonly TrendMark[] =>
        event.kind === 'tube' ? [{ kind: 'tube', day: event.day, product: null }] : [],
      ),
      ...productMarks(rows),
    ].toSorted((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0)),
    window,
    drift: pumpDrift({
      history,
      window,
      racksPerDay: racks?.ok === true ? racks.value / DAYS_PER_MONTH : null,
      everyDays: numberOrNull(site.visitEveryDays, 'site.visitEveryDays'),
      tube: { today: worksheet.asOf, ...tubeFacts(place.pump, last) },
    }),
  })
}

const historyVisit = ({ visit, worked, setup }: Row): HistoryVisit => ({
  visitId: visit.id,
  day: visit.startedAt.slice(0, 10),
  steps: visit.work.find((work) => work.pumpId === worked.pumpId)?.steps ?? [],
  flows: new Map(
    worked.tests.flatMap((test) =>
      test.flow.ok && isTrusted(test) ? [[test.testId, test.flow.value] as const] : [],
    ),
  ),
  productId: worked.productId,
  tubeFittedOn: pumpIn(setup, worked.pumpId)?.pump.tube.fittedOn ?? null,
})

/** Visits at which another product stood on the pump than at the visit before. */
const productMarks = (rows: readonly Row[]): readonly TrendMark[] =>
  rows.flatMap(({ visit, worked }, i) =>
    i > 0 && rows[i - 1]?.worked.productId !== worked.productId
      ? [{ kind: 'product' as const, day: visit.startedAt.slice(0, 10), product: worked.productName }]
      : [],
  )

function tubeFacts(pump: Pump, last: PumpVisit | null) {
  const findings = last?.asLeft?.quality.findings ?? []
  const primed = findings.every((finding) => finding.code !== 'not-primed')
  return {
    fittedOn: pump.tube.fittedOn,
    replaceAfterDays: numberOrNull(pump.tube.replaceAfterDays, 'pump.tube.replaceAfterDays'),
    screwDoesNotAct: last?.advice?.kind === 'diagnose' && last.advice.finding === 'screw-does-not-act',
    scatters: primed && findings.some((one) => one.code === 'scatter' && one.severity === 'stops'),
  }
}

const numberOrNull = (text: string | null, field: string): number | null => {
  const value = readNumber(text, field, { above: 0 })
  return value.ok ? value.value : null
}
