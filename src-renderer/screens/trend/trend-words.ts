import type { Leaving, NextVisit, PumpDrift, TubeReason } from '#core/drift/types'
import { addDays, dayFromNumber } from '#core/units/days'
import type { PumpTrend } from '#core/worksheet/pump-trend'
import type { SeriesPoint, TrendScale, TrendSeries } from '#core/worksheet/trend-series'
import type { DayMark } from '../../charts/day-marks'
import { dayNumberOf } from '#core/units/days'
import { dayWords } from '../../state/days-words'

export const SCALE_WORDS: Record<TrendScale, string> = { flow: 'Flow', dose: 'Dose', strength: 'Strength' }

export type Show = (value: number) => string

export const numberedDay = (day: number): string => dayWords(dayFromNumber(Math.round(day)))

const later = (since: string, days: number): string => dayWords(addDays(since, Math.round(days)))

/** What the chart shows, in words short enough to be heard. */
export function trendFinding(name: string, trend: PumpTrend, series: TrendSeries, show: Show): string {
  const last = series.points.at(-1)
  if (last === undefined) return `${name}: nothing measured yet.`
  const band = series.band.at(-1)
  const place = band === undefined ? '' : `, ${insideWords(last, band)}`
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

/** The day the flow leaves its window, with its interval. */
export function leavingWords({ since, days, earliest, latest, edge }: Leaving): string {
  if (days === 0) return 'It is outside its window now.'
  const way = edge === 'low' ? 'falls' : 'rises'
  if (days === null)
    return earliest === null || earliest === 0
      ? 'No day can be foretold on which it leaves its window.'
      : `As it goes it stays in its window; it ${way} out of it before ${later(since, earliest)} with one chance in forty at most.`
  const from =
    earliest === null || earliest === 0 ? 'perhaps already' : `not before ${later(since, earliest)}`
  if (latest === null)
    return `No drift is proved. At the middle of what the tests allow it ${way} out of its window about ${later(since, days)}, ${from}.`
  const to = `not after ${later(since, latest)}`
  return `If it goes on so it ${way} out of its window about ${later(since, days)} (95\u00a0%: ${from}, ${to}).`
}

export function rateWords({ outlook }: PumpDrift, show: Show): string {
  if (!outlook.ok) return 'No rate yet: it takes two visits to one tube.'
  const { decay, rateFrom } = outlook.value
  const amount = `${show(Math.abs(decay.in30Days.percent))} ± ${show(decay.in30Days.expanded)} % in 30 days`
  const whose = rateFrom === 'this-tube' ? '' : ', as the tube before did'
  switch (decay.direction) {
    case 'falling':
      return `Falls by ${amount}${whose}.`
    case 'rising':
      return `Rises by ${amount}${whose}. That is not wear: think of siphoning, a raised container, a higher voltage, a wrong tube, or somebody at the screw.`
    case 'steady':
      return `Steady as far as the tests can tell (${amount})${whose}.`
  }
}

const VISIT_REASONS: Record<NextVisit['reason'], string> = {
  'settling-in': 'a new tube changes most in its first week',
  'leaves-window': 'by then one pump in six like this has left its window',
  'already-out': 'it is outside its window',
  usual: 'the usual interval of this site',
}

export const nextVisitWords = (next: NextVisit): string =>
  `${dayWords(next.on)}: ${VISIT_REASONS[next.reason]}.`

export function tubeReasonWords(reason: TubeReason, show: Show): string {
  switch (reason.code) {
    case 'fell-at-once':
      return `Found at ${show(reason.found)} mL/min after it was left at ${show(reason.left)}, more than chance allows. If nobody turned the screw: worn tube, leak, blockage or thick cold product.`
    case 'worn-down':
      return `All falls between visits on this tube together leave ${show(100 * reason.part)} % of its flow. Turning a worn tube up overdoses once it is replaced.`
    case 'overdue':
      return `${reason.days} ${reason.days === 1 ? 'day' : 'days'} past its time.`
    case 'screw-does-not-act':
      return 'The screw no longer moves the flow.'
    case 'scatters':
      return 'Its runs scatter by more than 5 % although the line was primed.'
  }
}

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
