import { DENSITY } from '../drawdown/product-density'
import { chain, fail, ok, type Outcome } from '../outcome'
import type { Product, StockMovement } from '../records'
import { rectangular } from '../statistics/rectangular'
import { Decimal } from '../units/decimal'
import { UNITS } from '../units/dimensions'
import { convertExactly } from '../units/quantity'
import { PLAIN_DECIMAL, read } from '../units/read'
import { litresOf } from './price'

/** Half-widths of what a part container holds, as a share of a full one. Our judgement. */
export const READ_BY_LEVEL = 0.05
export const READ_BY_WEIGHT = 0.01

/** Containers in use at one time, over all machines of a site; more than that in a part is a slip. */
const MOST_OPEN = 10

export interface Stocked {
  /** L */
  readonly litres: Decimal
  /** standard uncertainty, L */
  readonly standard: number
  /** a count that says nothing about the container in use */
  readonly partUnknown: boolean
}

/**
 * Litres in one stock movement: full containers x size, and the part container by volume, or by mass as
 * (mass - tare) / density. Standard uncertainty of a part: 5 % of a container by level, 1 % by weight, rectangular; of a
 * count that leaves the part open: a whole container. Problems: tare or density `missing`, numbers out of range.
 */
export function stocked(movement: StockMovement, product: Product): Outcome<Stocked> {
  const size = litresOf(movement.containerSize)
  const full = count(movement.fullContainers)
  if (!size.ok) return size
  if (!full.ok) return full
  const whole = full.value.times(size.value)
  const container = size.value.toNumber()
  const part = movement.part
  if (part === null) {
    const partUnknown = movement.kind === 'count'
    return ok({ litres: whole, standard: partUnknown ? rectangular(container) : 0, partUnknown })
  }
  const byWeight = UNITS[part.unit].dimension === 'mass'
  return chain(byWeight ? weighed(movement, product) : levelled(part.value, part.unit), (litres) =>
    litres.gt(size.value.times(MOST_OPEN))
      ? fail({
          code: 'number-out-of-range',
          field: 'stock.part',
          low: 0,
          high: container * MOST_OPEN,
          unit: 'L',
        })
      : ok({
          litres: whole.plus(litres),
          standard: rectangular(container * (byWeight ? READ_BY_WEIGHT : READ_BY_LEVEL)),
          partUnknown: false,
        }),
  )
}

function count(text: string): Outcome<Decimal> {
  const field = 'stock.fullContainers'
  if (!PLAIN_DECIMAL.test(text)) return fail({ code: 'number-unreadable', field, text })
  const value = new Decimal(text)
  return value.isNegative() || value.gt(100_000)
    ? fail({ code: 'number-out-of-range', field, low: 0, high: 100_000, unit: '' })
    : ok(value)
}

function levelled(value: string, unit: keyof typeof UNITS): Outcome<Decimal> {
  const field = 'stock.part'
  if (!PLAIN_DECIMAL.test(value)) return fail({ code: 'number-unreadable', field, text: value })
  if (UNITS[unit].dimension !== 'volume')
    return fail({ code: 'unit-unknown', field, text: unit, expected: ['L', 'kg'] })
  const litres = convertExactly(value, unit, 'L')
  return litres.isNegative()
    ? fail({ code: 'number-out-of-range', field, low: 0, high: null, unit: 'L' })
    : ok(litres)
}

function weighed(movement: StockMovement, product: Product): Outcome<Decimal> {
  const { part, tare } = movement
  if (part === null || tare === null) return fail({ code: 'number-missing', field: 'stock.tare' })
  if (product.density === null) return fail({ code: 'missing', field: 'product.density', needed: 'density' })
  const density = read(product.density, 'product.density', DENSITY)
  if (!density.ok) return density
  for (const [field, text] of [
    ['stock.part', part.value],
    ['stock.tare', tare.value],
  ] as const)
    if (!PLAIN_DECIMAL.test(text)) return fail({ code: 'number-unreadable', field, text })
  const gross = convertExactly(part.value, part.unit, 'kg')
  const net = gross.minus(convertExactly(tare.value, tare.unit, 'kg'))
  return net.isNegative()
    ? fail({ code: 'number-out-of-range', field: 'stock.part', low: 0, high: null, unit: 'kg' })
    : ok(net.div(convertExactly(product.density.value, product.density.unit, 'kg/L')))
}
