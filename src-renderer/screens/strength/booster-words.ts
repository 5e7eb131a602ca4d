import type { BoosterChange } from '#core/tank/booster-of-pump'
import { formatNumber } from '#core/units/format'
import type { DecimalSign } from '#core/units/parse'

/** How far a change has come through the booster after the first rack and at the end of the wait. */
export function boosterFinding(change: BoosterChange, sign: DecimalSign): string {
  const say = (value: number): string => formatNumber(value, 3, sign)
  const first = change.strengths.find((one) => one.rack > 0)
  const last = change.strengths.at(-1)
  if (first === undefined || last === undefined) return ''
  return `Changed from ${say(change.before)} to ${say(change.after)} ppm: ${say(first.strength)} ppm leaves the booster after ${racks(first.rack)}, ${say(last.strength)} ppm after ${racks(last.rack)}.`
}

/** The same rack by rack. */
export const boosterTable = (change: BoosterChange, sign: DecimalSign) => ({
  caption: 'Product in the rinse after the change of dose',
  head: ['After', 'Leaves the booster, ppm by volume'],
  rows: change.strengths.map(({ rack, strength }) => [
    rack === 0 ? 'the change' : racks(rack),
    formatNumber(strength, 4, sign),
  ]),
})

const racks = (count: number): string => (count === 1 ? '1 rack' : `${count} racks`)
