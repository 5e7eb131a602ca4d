import { CODE_LIMIT_IDS, SHIPPED_LIMITS } from '#core/sanitize/code-limit-table'
import type { CodeLimit } from '#core/sanitize/types'
import { formatNumber, unitSymbol } from '#core/units/format'
import type { DecimalSign } from '#core/units/parse'

const GROUPS = [
  ['Wash temperature', 'wash-'],
  ['Hot-water sanitizing', 'rinse-temperature', 'ware-', 'hot-water-'],
  ['Pressure and drain', 'rinse-pressure', 'supply-', 'drain-'],
  ['Chlorine', 'chlorine-'],
  ['Iodine', 'iodine-'],
  ['Quat and others', 'quat-', 'other-'],
] as const

/** Every limit once, under the heading a person looks for it. */
export const LIMIT_GROUPS: readonly { readonly name: string; readonly limits: readonly CodeLimit[] }[] =
  GROUPS.map(([name, ...starts]) => ({
    name,
    limits: CODE_LIMIT_IDS.filter((id) => starts.some((start) => id.startsWith(start))).map(
      (id) => SHIPPED_LIMITS[id],
    ),
  }))

/** What a limit is about, as the start of a line. */
export const limitName = (limit: CodeLimit): string =>
  limit.what.charAt(0).toUpperCase() + limit.what.slice(1)

/** `at least 180 °F (82 °C)` */
export function limitWords(limit: CodeLimit, sign: DecimalSign): string {
  const say = (figure: CodeLimit['figures'][number]): string => {
    const text = formatNumber(figure.value, 4, sign)
    const short = /[.,]/.test(text) ? text.replace(/[.,]?0+$/, '') : text
    return figure.unit === 'pH' ? `pH ${short}` : `${short} ${unitSymbol(figure.unit)}`
  }
  const [first, ...others] = limit.figures
  const also = others.length === 0 ? '' : ` (${others.map(say).join(', ')})`
  return `${limit.bound === 'min' ? 'at least' : 'at most'} ${say(first)}${also}`
}
