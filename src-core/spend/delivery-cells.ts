import type { CurrencyCode, Day, EntryOf, Product } from '../records'
import { parseEntry, parseNumber, type DecimalSign } from '../units/parse'
import { readDay } from './delivery-day'
import type { DateOrder, DeliveryFault } from './delivery-types'
import { priceOn } from './price'

const SIZES = ['L', 'mL', 'gal-us', 'gal-imp'] as const

/** The cells of one row, each read or with the fault that stands in the way. */
type Read<T> = { readonly value: T } | { readonly fault: DeliveryFault }

/** A day that is past or today. */
export function readDayCell(text: string, order: DateOrder | null, today: Day): Read<Day> {
  if (text === '') return { fault: { code: 'empty', field: 'date' } }
  const day = readDay(text, order)
  if (day === 'unreadable') return { fault: { code: 'day-unreadable', text } }
  if (day === 'order-unknown') return { fault: { code: 'day-order-unknown', text } }
  return day > today ? { fault: { code: 'day-in-future', text } } : { value: day }
}

/** Whole containers, 1 to 99 999, as an entry holds them. */
export function readContainersCell(text: string, decimalSign: DecimalSign): Read<string> {
  if (text === '') return { fault: { code: 'empty', field: 'containers' } }
  const number = parseNumber(text, { field: 'containers', decimalSign })
  if (!number.ok) return { fault: { code: 'number', field: 'containers', problem: number.problem } }
  const whole = number.value.replace(/\.0*$/u, '')
  return /^[1-9]\d{0,4}$/u.test(whole) ? { value: whole } : { fault: { code: 'not-whole', text } }
}

/** A container size with its unit (litres when none is written); an empty cell means the product's own on that day. */
export function readSizeCell(
  text: string,
  decimalSign: DecimalSign,
  product: Product,
  day: Day,
  currency: CurrencyCode,
): Read<EntryOf<'volume'>> {
  if (text === '') {
    const known = sizeOf(product, day, currency)
    return known === null ? { fault: { code: 'size-unknown', product: product.name } } : { value: known }
  }
  const size = parseEntry(text, { field: 'size', units: [...SIZES], decimalSign })
  if (!size.ok) return { fault: { code: 'number', field: 'size', problem: size.problem } }
  if (Number(size.value.value) > 0) return { value: size.value }
  const problem = {
    code: 'number-out-of-range',
    field: 'size',
    low: 0,
    high: null,
    unit: size.value.unit,
  } as const
  return { fault: { code: 'number', field: 'size', problem } }
}

/** A product's container on a day: of its price row, else its own, in the unit it was entered in. */
function sizeOf(product: Product, day: Day, currency: CurrencyCode): EntryOf<'volume'> | null {
  const price = priceOn(product, day, currency)
  const row = price.ok
    ? product.prices.findLast((one) => one.from === price.value.from && one.currency === currency)
    : undefined
  return row?.containerSize ?? product.containerSize
}
