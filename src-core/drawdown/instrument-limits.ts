import { oncePer } from '../once'
import { fail, ok, type Outcome } from '../outcome'
import type { Instrument } from '../records'
import { read } from '../units/read'
import { UNITS } from '../units/dimensions'
import type { Entry, EntryOf } from '../units/entry'
import { inUnit } from '../units/quantity'
import { cylinderTolerance } from './cylinder-tolerances'

/** What an instrument can do, in the canonical unit of its readings: mL, or g for a scale. */
export interface InstrumentLimits {
  readonly measures: 'volume' | 'mass'
  readonly capacity: number | null
  readonly graduation: number | null
  readonly tolerance: number
  /** where the tolerance comes from when the record does not give one */
  readonly toleranceFrom: 'record' | 'class-b-assumed' | 'cup-assumed' | 'one-step-assumed'
}

/** A moulded cup is often out by 5 % of what it holds: common practice, no source. */
const CUP_SHARE = 0.05

/**
 * Reads the limits of an instrument. Without a stated tolerance a cylinder is taken as class B of its size, a cup as
 * +- 5 % of what it holds, a scale as +- one displayed step; the result says so.
 *
 * Problems: `missing` instrument or graduation when nothing can be assumed, and those of `read` with field
 * `instrument.capacity`, `.graduation` or `.tolerance`.
 */
export const instrumentLimits = (instrument: Instrument | null): Outcome<InstrumentLimits> =>
  instrument === null
    ? fail({ code: 'missing', field: 'test.instrumentId', needed: 'instrument' })
    : limitsOf(instrument)

const limitsOf = oncePer((instrument: Instrument): Outcome<InstrumentLimits> => {
  const measures = instrument.kind === 'scale' ? 'mass' : 'volume'
  const capacity = limit(instrument.capacity, measures, 'instrument.capacity')
  if (!capacity.ok) return capacity
  const graduation = limit(instrument.graduation, measures, 'instrument.graduation')
  if (!graduation.ok) return graduation
  const stated = limit(instrument.tolerance, measures, 'instrument.tolerance')
  if (!stated.ok) return stated
  const known = { measures, capacity: capacity.value, graduation: graduation.value } as const
  if (stated.value !== null) return ok({ ...known, tolerance: stated.value, toleranceFrom: 'record' })
  if (measures === 'mass')
    return known.graduation === null
      ? fail({ code: 'missing', field: 'instrument.graduation', needed: 'graduation' })
      : ok({ ...known, tolerance: known.graduation, toleranceFrom: 'one-step-assumed' })
  const isCup = instrument.kind === 'cup'
  const assumed =
    known.capacity === null
      ? null
      : isCup
        ? known.capacity * CUP_SHARE
        : cylinderTolerance(known.capacity, 'B')
  return assumed === null
    ? fail({ code: 'missing', field: 'instrument.tolerance', needed: 'instrument' })
    : ok({ ...known, tolerance: assumed, toleranceFrom: isCup ? 'cup-assumed' : 'class-b-assumed' })
})

/** A positive entry of the dimension wanted, null when there is none. */
function limit(entry: Entry | null, measures: 'volume' | 'mass', field: string): Outcome<number | null> {
  if (entry === null) return ok(null)
  const value = amountOf(entry, measures, field)
  if (!value.ok) return value
  return value.value > 0
    ? value
    : fail({
        code: 'number-out-of-range',
        field,
        low: 0,
        high: null,
        unit: measures === 'mass' ? 'g' : 'mL',
      })
}

/**
 * mL of a volume entry or g of a mass entry, zero or more. A unit of another kind is the problem `unit-unknown`.
 */
export function amountOf(entry: Entry | null, measures: 'volume' | 'mass', field: string): Outcome<number> {
  if (entry !== null && UNITS[entry.unit].dimension !== measures)
    return fail({
      code: 'unit-unknown',
      field,
      text: entry.unit,
      expected: measures === 'mass' ? ['g', 'kg', 'oz', 'lb'] : ['mL', 'L', 'fl-oz-us', 'fl-oz-imp'],
    })
  if (measures === 'mass') {
    const mass = read(entry as EntryOf<'mass'> | null, field, { low: 0 })
    return mass.ok ? ok(inUnit(mass.value, 'g')) : mass
  }
  const volume = read(entry as EntryOf<'volume'> | null, field, { low: 0 })
  return volume.ok ? ok(inUnit(volume.value, 'mL')) : volume
}
