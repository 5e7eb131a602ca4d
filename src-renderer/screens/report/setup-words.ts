import { BASIS_UNIT } from '#core/dose/types'
import type { Machine, Product, Pump } from '#core/records/index'
import { formatEntry, unitSymbol } from '#core/units/format'
import type { DecimalSign } from '#core/units/parse'

const RINSE_FROM = {
  measured: 'measured',
  'flow-and-seconds': 'flow × seconds',
  'data-plate': 'data plate',
} as const

/** The inputs a pump's doses were worked out with, in one line; what is not recorded is left out. */
export function setupWords(
  pump: Pump,
  machine: Machine,
  product: Product | undefined,
  sign: DecimalSign,
): string {
  const number = (text: string): string => (sign === 'comma' ? text.replace('.', ',') : text)
  const { window } = pump
  const { rinse } = machine
  const strength = product?.strength
  const parts = [
    window === null
      ? ''
      : `window ${number(window.low)} to ${number(window.high)} ${unitSymbol(BASIS_UNIT[window.basis])}, target ${number(window.target)}`,
    pump.doseSeconds === null ? '' : `${formatEntry(pump.doseSeconds, sign)} a rack`,
    rinse === null
      ? ''
      : rinse.kind === 'flow-and-seconds'
        ? `rinse ${formatEntry(rinse.flow, sign)} × ${formatEntry(rinse.seconds, sign)}`
        : `rinse ${formatEntry(rinse.perRack, sign)} a rack (${RINSE_FROM[rinse.kind]})`,
    product === undefined || product.density === null ? '' : `density ${formatEntry(product.density, sign)}`,
    strength === undefined || strength.kind === 'none'
      ? ''
      : `${number(strength.percent)} % ${strength.kind === 'trade-percent' ? 'trade' : 'by weight'}`,
  ]
  const said = parts.filter((part) => part !== '').join('; ')
  return said === '' ? '' : `${said.charAt(0).toUpperCase()}${said.slice(1)}.`
}
