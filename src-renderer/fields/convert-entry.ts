import type { Entry } from '#core/units/entry'
import { convertExactly } from '#core/units/quantity'
import type { UnitName } from '#core/units/dimensions'

/** Digits a converted value keeps at least: a thousand times finer than anything read off a glass. */
const LEAST_DIGITS = 6

/** The same quantity in another unit, to two digits more than were typed and no fewer than six. */
export function convertEntry<U extends UnitName>(entry: Entry, to: U): Entry<U> {
  if (entry.unit === to) return { value: entry.value, unit: to }
  const typed = entry.value.replace(/^-?0*\.?0*|\D/gu, '').length
  const exact = convertExactly(entry.value, entry.unit, to)
  const value = exact.toSignificantDigits(Math.max(LEAST_DIGITS, typed + 2)).toDecimalPlaces(12)
  return { value: value.toFixed(), unit: to }
}
