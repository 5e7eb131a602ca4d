import { later, leavingWords, rateWords } from '#core/messages/drift-words'
import type { PumpDrift } from '#core/drift/types'
import type { Id } from '#core/records/index'
import { formatNumber } from '#core/units/format'
import type { Report } from './report-of'

const driftOf = (report: Report, pumpId: Id): PumpDrift | null =>
  report.drift.find((one) => one.pumpId === pumpId)?.drift ?? null

/** For the customer: the day a pump is likely to leave its window, where the record proves a drift; null otherwise. */
export function leavingLine(report: Report, pumpId: Id): string | null {
  const leaving = driftOf(report, pumpId)?.leaving
  if (leaving?.ok !== true) return null
  const { days, latest, since, edge } = leaving.value
  if (days === null || days === 0 || latest === null) return null
  return `As it goes, it ${edge === 'low' ? 'falls' : 'rises'} out of its window about ${later(since, days)}.`
}

/** For the file: the rate of drift and the day it leaves its window, however little is known of it. */
export function driftLine(report: Report, pumpId: Id): string | null {
  const drift = driftOf(report, pumpId)
  if (drift === null) return null
  const rate = rateWords(drift, (value) => formatNumber(value, 2, report.sign))
  return drift.leaving.ok ? `${rate} ${leavingWords(drift.leaving.value)}` : rate
}
