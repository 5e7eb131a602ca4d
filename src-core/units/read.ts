import { fail, ok, type Outcome } from '../outcome'
import { Decimal } from './decimal'
import { UNITS, type Dimension, type UnitName } from './dimensions'
import type { EntryOf } from './entry'
import { exactFactor } from './factor'
import type { Quantity } from './quantity'

/** The double nearest to an entry's value in the canonical unit; a unit that is canonical needs no decimal. */
function toCanonical(value: string, unit: UnitName): number {
  const row = UNITS[unit]
  if (row.factor === '1' && row.offset === '0') return Number(value)
  return new Decimal(value).plus(row.offset).times(exactFactor(unit)).toNumber()
}

/** A plain decimal as entries hold it: optional minus, digits, optional point and digits. Nothing decimal.js adds. */
export const PLAIN_DECIMAL = /^-?(?:\d{1,15})(?:\.\d{1,15})?$/

/**
 * The quantity an entry stands for. Missing entry or unreadable text is a problem that names `field`; so is a value
 * outside `low`..`high` (both in the canonical unit, limits themselves allowed).
 */
export function read<D extends Dimension>(
  entry: EntryOf<D> | null,
  field: string,
  range: { readonly low?: number; readonly high?: number; readonly above?: number } = {},
): Outcome<Quantity<D>> {
  if (entry === null) return fail({ code: 'number-missing', field })
  if (!PLAIN_DECIMAL.test(entry.value)) return fail({ code: 'number-unreadable', field, text: entry.value })
  const row = UNITS[entry.unit as UnitName]
  const canonical = toCanonical(entry.value, entry.unit as UnitName)
  const tooLow =
    (range.low !== undefined && canonical < range.low) ||
    (range.above !== undefined && canonical <= range.above)
  const tooHigh = range.high !== undefined && canonical > range.high
  if (tooLow || tooHigh)
    return fail({
      code: 'number-out-of-range',
      field,
      low: range.low ?? range.above ?? null,
      high: range.high ?? null,
      unit: canonicalUnit(row.dimension),
    })
  return ok(canonical as unknown as Quantity<D>)
}

/** The double of a plain number text, with the same checks as `read`. */
export function readNumber(
  text: string | null,
  field: string,
  range: { readonly low?: number; readonly high?: number; readonly above?: number } = {},
): Outcome<number> {
  if (text === null || text === '') return fail({ code: 'number-missing', field })
  if (!PLAIN_DECIMAL.test(text)) return fail({ code: 'number-unreadable', field, text })
  const value = Number(text)
  const tooLow =
    (range.low !== undefined && value < range.low) || (range.above !== undefined && value <= range.above)
  if (tooLow || (range.high !== undefined && value > range.high))
    return fail({
      code: 'number-out-of-range',
      field,
      low: range.low ?? range.above ?? null,
      high: range.high ?? null,
      unit: '',
    })
  return ok(value)
}

/** The unit whose factor is 1 in a dimension. */
export function canonicalUnit(dimension: Dimension): UnitName {
  const name = (Object.keys(UNITS) as UnitName[]).find(
    (unit) => UNITS[unit].dimension === dimension && UNITS[unit].factor === '1' && UNITS[unit].offset === '0',
  )
  if (name === undefined) throw new Error(`no canonical unit for ${dimension}`)
  return name
}
