import type { StrengthSeries } from '#core/tank/service-summary'
import type { OtherTank } from '#core/tank/two-tanks'
import { formatNumber } from '#core/units/format'
import type { DecimalSign } from '#core/units/parse'

/** The other tank by name, as it stands in a legend or over a column. */
export const otherTankName = ({ which }: Pick<OtherTank, 'which'>): string =>
  which === 'wash-tank' ? 'Wash tank' : 'Second tank'

/** What the other tank does over the service, as one sentence. */
export function otherTankFinding(
  other: Pick<OtherTank, 'which' | 'fedBy'>,
  series: StrengthSeries,
  sign: DecimalSign,
): string {
  const say = (value: number): string => formatNumber(value, 3, sign)
  const name = `The ${otherTankName(other).toLowerCase()}`
  if (other.which === 'upstream-tank' && other.fedBy === null)
    return `${name} gets fresh rinse water and none of this product.`
  const start = series.points[0]?.strength ?? 0
  const by = other.fedBy === null ? ', fed by what comes over' : `, with ${other.fedBy.name} at its target`
  const below = series.racksBelow ?? 0
  const outside = below === 0 ? '' : ` ${below} of ${series.racks} racks go through it below the window.`
  return `${name}${by}, starts at ${say(start)} g/L and heads for ${say(series.settlesAt)} g/L.${outside}`
}
