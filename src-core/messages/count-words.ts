import { formatNumber } from '../units/format'
import type { DecimalSign } from '../units/parse'

export const count = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`

/** A share as percent, two significant digits. */
export const percentWords = (share: number, sign: DecimalSign): string =>
  `${formatNumber(share * 100, 2, sign)} %`
