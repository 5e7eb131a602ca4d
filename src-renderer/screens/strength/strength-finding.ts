import type { StrengthSeries } from '#core/tank/service-summary'
import { formatNumber } from '#core/units/format'
import type { DecimalSign } from '#core/units/parse'

/** What the course of a service shows, as one sentence: where it starts, where it goes, when it leaves the window. */
export function strengthFinding(
  series: StrengthSeries,
  window: { readonly low: number; readonly high: number } | null,
  sign: DecimalSign,
  subject = 'The wash',
): string {
  const say = (value: number): string => formatNumber(value, 3, sign)
  const start = series.points[0]?.strength ?? 0
  const course = `${subject} starts at ${say(start)} g/L and heads for ${say(series.settlesAt)} g/L`
  const after = series.fills.length > 1 ? ` after each of ${series.fills.length} fills` : ''
  if (window === null) return `${course}${after}. No window is set to hold it against.`
  return `${course}${after}. ${inWindow(series)}`
}

function inWindow(series: StrengthSeries): string {
  const below = series.racksBelow ?? 0
  const above = series.racksAbove ?? 0
  if (below === 0 && above === 0) return `All ${racks(series.racks)} are washed inside the window.`
  if (below > 0 && above > 0)
    return `${racks(below)} of ${series.racks} ${are(below)} washed below the window, ${above} above it.`
  return below > 0
    ? outside('below', below, series.firstBelow, series.lastBelow, series.racks)
    : outside('above', above, series.firstAbove, series.lastAbove, series.racks)
}

/** One stretch of racks is named by its ends; several stretches, one after each fill, by their count. */
function outside(
  side: string,
  count: number,
  first: number | null,
  last: number | null,
  all: number,
): string {
  if (count === all) return `All ${racks(all)} ${are(all)} washed ${side} the window.`
  const from = first ?? 0
  const to = last ?? all
  if (to - from + 1 > count)
    return `${racks(count)} of ${all} ${are(count)} washed ${side} the window, the first of them rack ${from}.`
  if (count === 1) return `Only rack ${from} is washed ${side} the window.`
  return to === all
    ? `From rack ${from} on it is ${side} the window: ${count} of ${racks(all)}.`
    : `Racks ${from} to ${to} are washed ${side} the window, of ${all}.`
}

const racks = (count: number): string => (count === 1 ? '1 rack' : `${count} racks`)
const are = (count: number): string => (count === 1 ? 'is' : 'are')
