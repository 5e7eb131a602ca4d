import type { Estimate, ResultUnit } from '../statistics/estimate'
import { Decimal } from './decimal'
import { UNITS, type UnitName } from './dimensions'
import type { Entry, NumberText } from './entry'
import { minorDigits } from './money'
import type { DecimalSign } from './parse'

/** Nothing shown has more digits than this, whatever was asked for. */
const MOST_PLACES = 12

const withSign = (text: string, sign: DecimalSign): string =>
  (sign === 'comma' ? text.replace('.', ',') : text).replace('-', '−')

/** A double with a fixed number of decimal places, half away from zero on its decimal digits. */
export function formatPlaces(value: number, places: number, sign: DecimalSign): string {
  const kept = Math.min(Math.max(0, places), MOST_PLACES)
  const text = new Decimal(value).toFixed(kept)
  return withSign(/^-0(?:\.0*)?$/u.test(text) ? text.slice(1) : text, sign)
}

/** A double to a number of significant digits, without exponent. Zero is `0`. */
export function formatNumber(value: number, digits: number, sign: DecimalSign): string {
  if (value === 0) return '0'
  const rounded = new Decimal(value).toSignificantDigits(digits)
  const places = Math.max(0, digits - 1 - rounded.e)
  return formatPlaces(rounded.toNumber(), places, sign)
}

/** Decimal places at which an uncertainty shows two significant digits. At most `MOST_PLACES`, at least 0. */
export function placesFor(expanded: number): number {
  if (!(expanded > 0)) return 2
  const two = new Decimal(expanded).toSignificantDigits(2)
  return Math.min(Math.max(0, 1 - two.e), MOST_PLACES)
}

export interface EstimateText {
  readonly value: string
  readonly expanded: string
  readonly low: string
  readonly high: string
  readonly unit: string
  /** `29.90 ± 0.62 mL/min` */
  readonly whole: string
}

/**
 * An estimate as it is shown: uncertainty to two significant digits, value to the same place (GUM 7.2.6).
 */
export function formatEstimate(estimate: Estimate<ResultUnit>, sign: DecimalSign): EstimateText {
  const places = placesFor(estimate.expanded)
  const show = (value: number): string => formatPlaces(value, places, sign)
  const unit = unitSymbol(estimate.unit)
  const value = show(estimate.value)
  const expanded = show(estimate.expanded)
  return {
    value,
    expanded,
    low: show(estimate.low),
    high: show(estimate.high),
    unit,
    whole: `${value} ± ${expanded} ${unit}`,
  }
}

/** What was typed, with its unit: digits as typed, sign as set. */
export const formatEntry = (entry: Entry, sign: DecimalSign): string =>
  `${withSign(entry.value, sign)} ${UNITS[entry.unit].symbol}`

/** A bare number: digits as typed, sign as set. */
export const formatTyped = (text: NumberText, sign: DecimalSign): string => withSign(text, sign)

/** Money at the minor unit of its currency, half up: `32.98 EUR`. */
export const formatMoney = (amount: Decimal, currency: string, sign: DecimalSign): string =>
  `${withSign(amount.toFixed(minorDigits(currency), Decimal.ROUND_HALF_UP), sign)} ${currency}`

/** How a unit is written. Units of results that no entry can have stand here too. */
export const unitSymbol = (unit: ResultUnit): string =>
  unit in UNITS ? UNITS[unit as UnitName].symbol : (RESULT_UNITS[unit as keyof typeof RESULT_UNITS] ?? unit)

const RESULT_UNITS = {
  turns: 'turns',
  'g/rack': 'g/rack',
  'L/month': 'L a month',
  'money/month': 'a month',
} as const
