import { Decimal } from './decimal'
import { UNITS, type Dimension, type DimensionOf, type UnitName, type UnitOf } from './dimensions'
import { exactFactor } from './factor'

declare const dimension: unique symbol

/**
 * A physical quantity. At run time a plain double in the canonical unit of its dimension; to the compiler an opaque
 * object, so that `a + b` does not compile and a volume is never taken for a mass.
 */
export interface Quantity<D extends Dimension> {
  readonly [dimension]: D
}

export type Volume = Quantity<'volume'>
export type Mass = Quantity<'mass'>
export type Duration = Quantity<'duration'>
export type Length = Quantity<'length'>
export type Flow = Quantity<'flow'>
export type Density = Quantity<'density'>
export type Temperature = Quantity<'temperature'>
export type Pressure = Quantity<'pressure'>
export type ProductByVolume = Quantity<'product-by-volume'>
export type ProductByMass = Quantity<'product-by-mass'>
export type ActiveByMass = Quantity<'active-by-mass'>
export type Hardness = Quantity<'hardness'>
export type Solids = Quantity<'solids'>
export type Conductivity = Quantity<'conductivity'>
/** Product per rack; canonical mL/rack. */
export type Dose = Quantity<'dose'>

const factors = Object.fromEntries(
  Object.entries(UNITS).map(([name, row]) => [
    name,
    { factor: exactFactor(name as UnitName).toNumber(), offset: Number(row.offset) },
  ]),
) as Record<UnitName, { readonly factor: number; readonly offset: number }>

/** A quantity from a double in the unit named. The double must be finite: entries are checked before they get here. */
export const quantity = <U extends UnitName>(value: number, unit: U): Quantity<DimensionOf<U>> => {
  const { factor, offset } = factors[unit]
  return ((value + offset) * factor) as unknown as Quantity<DimensionOf<U>>
}

/** The value of a quantity as a double in the unit named; only units of its own dimension compile. */
export const inUnit = <D extends Dimension>(q: Quantity<D>, unit: UnitOf<NoInfer<D>>): number => {
  const { factor, offset } = factors[unit]
  return (q as unknown as number) / factor - offset
}

/** Sum of two quantities of one dimension. Not for temperatures, whose scales have different zeros. */
export const add = <D extends Exclude<Dimension, 'temperature' | 'pH'>>(
  a: Quantity<D>,
  b: Quantity<NoInfer<D>>,
): Quantity<D> => ((a as unknown as number) + (b as unknown as number)) as unknown as Quantity<D>

/**
 * Converts a decimal text between units of one dimension with exact factors, to 40 significant digits.
 */
export function convertExactly(value: string, from: UnitName, to: UnitName): Decimal {
  const source = UNITS[from]
  const target = UNITS[to]
  if (source.dimension !== target.dimension)
    throw new Error(`${from} and ${to} do not measure the same thing`)
  return new Decimal(value)
    .plus(source.offset)
    .times(exactFactor(from))
    .div(exactFactor(to))
    .minus(target.offset)
}
