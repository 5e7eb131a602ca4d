import { dayWords } from '#core/messages/day-words'
import { later, leavingWords, type Show } from '#core/messages/drift-words'
import { dayFromNumber } from '#core/units/days'
import type { PumpTrend } from '#core/worksheet/pump-trend'
import type { SeriesPoint, TrendScale, TrendSeries } from '#core/worksheet/trend-series'
import type { DayMark } from '../../charts/day-marks'
import { dayNumberOf } from '#core/units/days'

export const SCALE_WORDS: Record<TrendScale, string> = { flow: 'Flow', dose: 'Dose', strength: 'Strength' }

export const numberedDay = (day: number): string => dayWords(dayFromNumber(Math.round(day)))

/** What the chart shows, in words short enough to be heard. */
export function trendFinding(name: string, trend: PumpTrend, series: TrendSeries, show: Show): string {
  const last = series.points.at(-1)
  if (last === undefined) return `${name}: nothing measured yet.`
  const band = series.band.at(-1)
  const place =
    band === undefined
      ? ''
      : last.verdict === null
        ? ', from runs that do not tell'
        : `, ${insideWords(last, band)}`
  const { leaving } = trend.drift
  const goes = leaving.ok ? ` ${leavingWords(leaving.value)}` : ''
  return `${name}: ${show(last.value)} on ${numberedDay(last.day)}${place}.${goes}`
}

const insideWords = (point: SeriesPoint, band: { readonly low: number; readonly high: number }): string =>
  point.value < band.low
    ? 'below its window'
    : point.value > band.high
      ? 'above its window'
      : 'inside its window'

/** What happened and what may, as marks on the days. */
export function marksOf(trend: PumpTrend): readonly DayMark[] {
  const happened = trend.marks.map((mark): DayMark => ({
    day: dayNumberOf(mark.day),
    word: mark.kind === 'tube' ? 'New tube' : (mark.product ?? 'Another product'),
    look: 'solid',
    tone: 'ink',
  }))
  const jumps = trend.drift.changes
    .filter((change) => change.jumped)
    .map((change): DayMark => ({
      day: dayNumberOf(change.to.day),
      word: 'Jump',
      look: 'dashed',
      tone: 'ink',
    }))
  const { leaving } = trend.drift
  const leaves =
    leaving.ok && leaving.value.days !== null && leaving.value.days > 0
      ? [
          {
            day: dayNumberOf(leaving.value.since) + leaving.value.days,
            word: `Leaves ${later(leaving.value.since, leaving.value.days)}`,
            look: 'dashed' as const,
            tone: 'bad' as const,
          },
        ]
      : []
  return [...happened, ...jumps, ...leaves].toSorted((a, b) => a.day - b.day)
}
