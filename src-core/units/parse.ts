import { fail, ok, type Outcome } from '../outcome'
import { UNITS, type UnitName } from './dimensions'
import type { Entry, NumberText } from './entry'
import { PLAIN_DECIMAL } from './read'

export type DecimalSign = 'point' | 'comma'

/** How people write the units, without spaces and in lower case. Several units may share a word: the first allowed wins. */
const WORDS: Partial<Record<UnitName, readonly string[]>> = {
  mL: ['ml', 'cc', 'millilitre', 'millilitres', 'milliliter', 'milliliters'],
  L: ['l', 'litre', 'litres', 'liter', 'liters'],
  'fl-oz-us': ['floz', 'usfloz', 'oz', 'fluidounce', 'fluidounces'],
  'fl-oz-imp': ['floz', 'impfloz', 'ukfloz', 'oz', 'fluidounce', 'fluidounces'],
  'gal-us': ['gal', 'usgal', 'gallon', 'gallons'],
  'gal-imp': ['gal', 'impgal', 'ukgal', 'gallon', 'gallons'],
  g: ['g', 'gram', 'grams'],
  kg: ['kg', 'kilo', 'kilos', 'kilogram', 'kilograms'],
  oz: ['oz', 'ounce', 'ounces'],
  lb: ['lb', 'lbs', 'pound', 'pounds'],
  s: ['s', 'sec', 'secs', 'second', 'seconds', '"'],
  min: ['min', 'mins', 'minute', 'minutes'],
  mm: ['mm'],
  cm: ['cm'],
  m: ['m', 'metre', 'metres', 'meter', 'meters'],
  in: ['in', 'inch', 'inches', '"'],
  ft: ['ft', 'foot', 'feet'],
  'mL/min': ['ml/min', 'mlpermin', 'ml/minute'],
  'L/min': ['l/min', 'lpm', 'lperminute'],
  'fl-oz-us/min': ['floz/min', 'oz/min', 'usfloz/min'],
  'fl-oz-imp/min': ['floz/min', 'oz/min', 'impfloz/min'],
  'gal-us/min': ['gal/min', 'gpm', 'usgal/min'],
  'gal-imp/min': ['gal/min', 'impgal/min'],
  'g/mL': ['g/ml', 'g/cm3', 'g/cc', 'sg'],
  'kg/L': ['kg/l'],
  'lb/gal-us': ['lb/gal', 'lb/usgal'],
  degC: ['c', '°c', 'degc'],
  degF: ['f', '°f', 'degf'],
  kPa: ['kpa'],
  bar: ['bar'],
  psi: ['psi'],
  'ppm-vv': ['ppm', 'ppmv/v', 'ppmvv', 'ppmv/vproduct'],
  'percent-vv': ['%', '%v/v', '%v/vproduct'],
  'mg/L-product': ['mg/l', 'mg/lproduct'],
  'g/L-product': ['g/l', 'g/lproduct'],
  'mg/L-active': ['mg/l', 'ppm', 'mg/lactive'],
  'mg/L-CaCO3': ['mg/l', 'ppm', 'mg/lcaco3', 'mg/lascaco3'],
  gpg: ['gpg', 'gr/gal', 'grains', 'grain', 'grains/gal', 'grains/usgal'],
  'deg-dH': ['dh', '°dh'],
  'deg-fH': ['fh', '°fh'],
  'deg-Clark': ['clark', '°clark', '°e'],
  'mmol/L-CaCO3': ['mmol/l', 'mmol'],
  'mg/L': ['mg/l', 'ppm'],
  'uS/cm': ['us/cm', 'µs/cm', 'μs/cm', 'us'],
  'mS/cm': ['ms/cm', 'ms'],
  'mL/rack': ['ml/rack', 'ml'],
  'fl-oz-us/rack': ['floz/rack', 'oz/rack', 'floz', 'oz', 'usfloz/rack'],
  'fl-oz-imp/rack': ['floz/rack', 'oz/rack', 'floz', 'oz', 'impfloz/rack'],
  pH: ['ph'],
  percent: ['%', 'percent'],
  drops: ['drops', 'drop'],
  d: ['d', 'day', 'days'],
}

const NUMBER_THEN_REST = /^([+\-−]?)((?:\d|[.,])+)\s*(.*)$/su

/**
 * Reads a number as a person types it: `1.25`, `1,25`, `.5`, `12.` Grouping signs, exponents, hexadecimal and any
 * other notation are refused. A lone sign that could be the grouping sign of the language (`1,234` where the decimal
 * sign is a point) comes back as `number-ambiguous` with both readings, never as a guess.
 */
export function parseNumber(
  text: string,
  options: { readonly field: string; readonly decimalSign: DecimalSign },
): Outcome<NumberText> {
  const parts = split(text, options.field)
  if (!parts.ok) return parts
  if (parts.value.rest !== '') return fail({ code: 'number-unreadable', field: options.field, text })
  return canonical(parts.value.sign, parts.value.digits, text, options)
}

/**
 * Reads a quantity: a number, and a unit if one was typed (`3.5 fl oz`). Without a unit the first of `units` is meant.
 * A unit that measures something else is `unit-unknown`, with what would be understood.
 */
export function parseEntry<U extends UnitName>(
  text: string,
  options: {
    readonly field: string
    readonly units: readonly [U, ...U[]]
    readonly decimalSign: DecimalSign
  },
): Outcome<Entry<U>> {
  const parts = split(text, options.field)
  if (!parts.ok) return parts
  const value = canonical(parts.value.sign, parts.value.digits, text, options)
  if (!value.ok) return value
  const word = parts.value.rest.toLowerCase().replace(/[\s.]/gu, '')
  const unit = word === '' ? options.units[0] : options.units.find((name) => isWordFor(name, word))
  if (unit === undefined)
    return fail({
      code: 'unit-unknown',
      field: options.field,
      text: parts.value.rest,
      expected: options.units.map((name) => UNITS[name].symbol),
    })
  return ok({ value: value.value, unit })
}

const isWordFor = (name: UnitName, word: string): boolean =>
  UNITS[name].symbol.toLowerCase().replace(/[\s.]/gu, '') === word || (WORDS[name]?.includes(word) ?? false)

interface Parts {
  readonly sign: string
  readonly digits: string
  readonly rest: string
}

function split(text: string, field: string): Outcome<Parts> {
  const trimmed = text.trim()
  if (trimmed === '') return fail({ code: 'number-missing', field })
  const match = NUMBER_THEN_REST.exec(trimmed)
  // A digit after the unit, or a second group of digits, is another notation: 1e3, 0x10, 1_000, 1 234.
  if (match === null || /^[\d_xe]|\d/iu.test(match[3] === undefined ? '' : unitTail(match[3])))
    return fail({ code: 'number-unreadable', field, text })
  return ok({ sign: match[1] ?? '', digits: match[2] ?? '', rest: match[3] ?? '' })
}

/** The units that carry a digit or begin with e or x in their name are not mistaken for another notation. */
const unitTail = (rest: string): string => rest.replace(/caco3|cm3/giu, '')

function canonical(
  sign: string,
  digits: string,
  text: string,
  options: { readonly field: string; readonly decimalSign: DecimalSign },
): Outcome<NumberText> {
  const unreadable = fail({ code: 'number-unreadable', field: options.field, text })
  const signs = digits.match(/[.,]/gu) ?? []
  if (signs.length > 1 || !/\d/u.test(digits)) return unreadable
  const minus = sign === '-' || sign === '−' ? '-' : ''
  const [before = '', after = ''] = digits.split(/[.,]/u)
  const grouping = options.decimalSign === 'point' ? ',' : '.'
  if (signs[0] === grouping && after.length === 3 && /^[1-9]\d{0,2}$/u.test(before))
    return fail({
      code: 'number-ambiguous',
      field: options.field,
      text,
      readings: [`${minus}${before}.${after}`, `${minus}${before}${after}`],
    })
  const whole = before.replace(/^0+(?=\d)/u, '') || '0'
  const value = `${minus}${whole}${after === '' ? '' : `.${after}`}`
  return PLAIN_DECIMAL.test(value) ? ok(value) : unreadable
}
