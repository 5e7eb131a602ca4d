import type { StrengthSeries } from '#core/tank/service-summary'
import { formatNumber } from '#core/units/format'
import type { DecimalSign } from '#core/units/parse'

/** What the course of a service shows, as one sentence: where it starts, where it goes, when it leaves the window. */
export function strengthFinding(
  series: StrengthSeries,
  window: { readonly low: number; readonly high: number } | null,
  sign: DecimalSign,
): string {
  const say = (value: number): string => formatNumber(value, 3, sign)
  const start = series.points[0]?.strength ?? 0
  const course = `The wash starts at ${say(start)} g/L and heads for ${say(series.settlesAt)} g/L`
  const after = series.fills.length > 1 ? ` after each of ${series.fills.length} fills` : ''
  if (window === null) return `${course}${after}. No window is set to hold it against.`
  return `${course}${after}. ${inWindow(series)}`
}

function inWindow(series: StrengthSeries): string {
  const below = series.racksBelow ?? 0
  const above = series.racksAbove ?? 0
  if (below === 0 && above === 0) return `All ${racks(series.racks)} are washed inside the window.`
  if (below > 0 && above > 0)
    return `${racks(below)} of ${series.racks} are washed below the window and ${above} above it.`
  const out = below > 0 ? below : above
  const side = below > 0 ? 'below' : 'above'
  const first = (below > 0 ? series.firstBelow : series.firstAbove) ?? 0
  if (out === series.racks) return `All ${racks(out)} are washed ${side} the window.`
  return `From rack ${first} on it is ${side} the window; ${racks(out)} of ${series.racks} are washed so.`
}

const racks = (count: number): string => (count === 1 ? '1 rack' : `${count} racks`)
