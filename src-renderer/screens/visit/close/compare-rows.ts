import type { Id } from '#core/records/index'
import type { Estimate } from '#core/statistics/estimate'
import { formatEstimate, formatPlaces, placesFor, unitSymbol } from '#core/units/format'
import type { DecimalSign } from '#core/units/parse'
import { judgedState } from '#core/worksheet/judged-state'
import type { PumpState, PumpVisit, TestResult, VisitResult } from '#core/worksheet/types'

/** One end of a pump's visit, ready to be shown; null text where there is nothing to show. */
export interface CompareEnd {
  readonly state: PumpState
  readonly text: string | null
}

export interface CompareRow {
  readonly pumpId: Id
  readonly name: string
  readonly product: string
  readonly found: CompareEnd
  readonly left: CompareEnd
  readonly unit: string
  /** eighths from as found to as left */
  readonly turned: number
  readonly money: string | null
  readonly litres: string | null
}

/** As found beside as left for every pump of a visit, on the basis of its window where it has one. */
export const compareRows = (visit: VisitResult, currency: string, sign: DecimalSign): readonly CompareRow[] =>
  visit.pumps.map((pump): CompareRow => {
    const saving = visit.saving.find((row) => row.pumpId === pump.pumpId)
    return {
      pumpId: pump.pumpId,
      name: pump.pumpName,
      product: pump.productName ?? '',
      found: end(pump.asFound, sign),
      left: end(pump.asLeft, sign),
      unit: unitOf(pump),
      turned: (pump.asLeft?.eighths ?? 0) - (pump.asFound?.eighths ?? 0),
      money: saving?.moneyPerMonth.ok === true ? change(saving.moneyPerMonth.value, currency, sign) : null,
      litres: saving?.litresPerMonth.ok === true ? change(saving.litresPerMonth.value, 'L', sign) : null,
    }
  })

const best = (test: TestResult): Estimate | null =>
  test.decision.ok
    ? test.decision.value.value
    : test.dose.ok
      ? test.dose.value
      : test.flow.ok
        ? test.flow.value
        : null

function end(test: TestResult | null, sign: DecimalSign): CompareEnd {
  if (test === null) return { state: 'not-tested', text: null }
  const figure = best(test)
  const text = figure === null ? null : formatEstimate(figure, sign)
  return {
    state: judgedState(test),
    text: text === null ? null : `${text.value} ± ${text.expanded}`,
  }
}

function unitOf(pump: PumpVisit): string {
  const figure = pump.asLeft === null ? null : best(pump.asLeft)
  return figure === null ? '' : unitSymbol(figure.unit)
}

/** What a month uses or costs less (or more) than as found: `12.4 ± 1.6 EUR less a month`; nothing where it is too little to tell. */
function change(
  estimate: Estimate<'money/month'> | Estimate<'L/month'>,
  unit: string,
  sign: DecimalSign,
): string | null {
  if (Math.abs(estimate.value) < estimate.expanded / 10) return null
  const places = placesFor(estimate.expanded)
  const value = formatPlaces(Math.abs(estimate.value), places, sign)
  const doubt = formatPlaces(estimate.expanded, places, sign)
  return `${value} ± ${doubt} ${unit} ${estimate.value < 0 ? 'more' : 'less'} a month`
}
