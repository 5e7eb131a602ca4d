import { z } from 'zod'
import { UNIT_NAMES, UNITS, type Dimension, type UnitName, type UnitOf } from '../units/dimensions'
import { PLAIN_DECIMAL } from '../units/read'

/** Limits that keep one document readable and one line printable; generous against any real site. */
export const LIMITS = { name: 200, text: 10_000, list: 20_000 } as const

export const number = z.string().max(40).regex(PLAIN_DECIMAL, 'is not a plain decimal number')
export const id = z.uuid()
export const day = z.iso.date()
export const instant = z.iso.datetime()
export const currency = z.string().regex(/^[A-Z]{3}$/, 'is not a three-letter currency code')
export const name = z.string().max(LIMITS.name)
export const text = z.string().max(LIMITS.text)
export const list = <T extends z.ZodType>(item: T) => z.array(item).max(LIMITS.list).readonly()

const unitNames = UNIT_NAMES as readonly [UnitName, ...UnitName[]]

export const anyEntry = z.strictObject({ value: number, unit: z.enum(unitNames) }).readonly()

/** An entry whose unit measures the dimension named. */
export function entryOf<D extends Dimension>(dimension: D) {
  const names = UNIT_NAMES.filter((unit) => UNITS[unit].dimension === dimension) as unknown as readonly [
    UnitOf<D>,
    ...UnitOf<D>[],
  ]
  return z.strictObject({ value: number, unit: z.enum(names) as unknown as z.ZodType<UnitOf<D>> }).readonly()
}
