import { formatNumber } from '../units/format'
import type { DecimalSign } from '../units/parse'
import type { WorkingLine } from './types'

export const line = (symbol: string, name: string, value: number, unit = ''): WorkingLine => ({
  symbol,
  name,
  value,
  unit,
})

/** A number as it stands inside a formula: five significant digits, no trailing zeros. */
export function put(value: number, sign: DecimalSign): string {
  const text = formatNumber(value, 5, sign)
  return /[.,]/.test(text) ? text.replace(/[.,]?0+$/, '') : text
}
