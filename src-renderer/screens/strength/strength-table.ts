import type { StrengthPoint, StrengthSeries } from '#core/tank/service-summary'
import { formatNumber } from '#core/units/format'
import type { DecimalSign } from '#core/units/parse'

const ABOUT = 12

/** The course as a table: every fill and the rack before it, the end, and about a dozen racks between. */
export function strengthTable(
  series: StrengthSeries,
  sign: DecimalSign,
  other: { readonly series: StrengthSeries; readonly name: string; readonly own: string } | null = null,
) {
  const say = (value: number): string => formatNumber(value, 4, sign)
  const every = Math.max(1, Math.round(series.racks / ABOUT))
  const kept = series.points.filter(
    (point, index) =>
      point.fill ||
      series.points[index + 1]?.fill === true ||
      index === series.points.length - 1 ||
      point.rack % every === 0,
  )
  return {
    caption: 'Strength of the wash water over the service',
    head: [
      'After',
      other === null ? 'Strength, g/L' : `${other.own}, g/L`,
      'Lowest in the rack, g/L',
      'With the flow’s doubt, g/L',
      ...(other === null ? [] : [`${other.name}, g/L`]),
    ],
    rows: kept.map((point) => [
      name(point),
      say(point.strength),
      say(point.trough),
      `${say(point.low)} to ${say(point.high)}`,
      ...(other === null ? [] : [say(sameMoment(point, other.series))]),
    ]),
  }
}

/** The other tank at the same moment; both courses are thinned at the same racks. */
const sameMoment = (point: StrengthPoint, other: StrengthSeries): number =>
  other.points.find((one) => one.rack === point.rack && one.fill === point.fill)?.strength ?? other.last

const name = (point: StrengthPoint): string =>
  point.fill ? (point.rack === 0 ? 'first fill' : `fill at rack ${point.rack}`) : `rack ${point.rack}`
