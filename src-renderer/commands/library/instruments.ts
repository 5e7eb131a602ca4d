import { cylinderTolerance, type CylinderClass } from '#core/drawdown/cylinder-tolerances'
import type { Id, Instrument, InstrumentKind } from '#core/records/index'
import { Decimal } from '#core/units/decimal'
import { UNITS, type UnitName } from '#core/units/dimensions'
import { entry, type Entry } from '#core/units/entry'
import { convertExactly } from '#core/units/quantity'
import { changeById, removeById } from '../lists'

type Instruments = readonly Instrument[]

/** The usual smallest mark of a glass cylinder by its size, mL. From memory of common glassware; the glass decides. */
const MARKS: readonly (readonly [capacity: number, mark: string])[] = [
  [5, '0.1'],
  [10, '0.2'],
  [25, '0.5'],
  [50, '1'],
  [100, '1'],
  [250, '2'],
  [500, '5'],
  [1000, '10'],
]

export const newInstrument = (input: {
  readonly id: Id
  readonly name: string
  readonly kind: InstrumentKind
}): Instrument => ({
  ...input,
  capacity: null,
  graduation: null,
  tolerance: null,
  bore: null,
  checkedOn: null,
})

/** A glass cylinder of a standard size, with the tolerance of its class and the usual mark filled in. */
export const newCylinder = (id: Id, millilitres: number, kind: CylinderClass): Instrument =>
  withCylinderClass(
    {
      ...newInstrument({ id, name: `${millilitres} mL cylinder, class ${kind}`, kind: 'cylinder' }),
      capacity: entry(String(millilitres), 'mL'),
    },
    kind,
  )

/** Share of what it holds by which a vessel without a class may be wrong. Common practice for moulded cups, no source. */
const NO_CLASS = '0.05'

/** A cylinder or cup that bears no class. */
export function unmarkedCup(id: Id, millilitres: number): Instrument {
  const { capacity, graduation } = newCylinder(id, millilitres, 'B')
  return {
    ...newInstrument({ id, name: `${millilitres} mL cylinder, no class`, kind: 'cylinder' }),
    capacity,
    graduation,
    tolerance: entry(new Decimal(millilitres).times(NO_CLASS).toFixed(), 'mL'),
  }
}

/** A scale known by the step it shows, taken to be right within one step either way. Common practice, no source. */
export const usualScale = (id: Id, grams: string): Instrument => ({
  ...newInstrument({ id, name: `Scale, ${grams} g steps`, kind: 'scale' }),
  graduation: entry(grams, 'g'),
  tolerance: entry(grams, 'g'),
})

/** Fills in the tolerance of a class, and the usual mark where none was entered. Unchanged without a capacity. */
export function withCylinderClass(instrument: Instrument, kind: CylinderClass): Instrument {
  const millilitres = inMillilitres(instrument.capacity)
  const tolerance = millilitres === null ? null : cylinderTolerance(millilitres, kind)
  if (millilitres === null || tolerance === null) return instrument
  const mark = MARKS.find(([capacity]) => capacity >= millilitres)?.[1]
  return {
    ...instrument,
    tolerance: entry(new Decimal(tolerance).toFixed(), 'mL'),
    graduation: instrument.graduation ?? (mark === undefined ? null : entry(mark, 'mL')),
  }
}

/** The class whose tolerance this cylinder has, to show which one was chosen. */
export function cylinderClassOf(instrument: Instrument): CylinderClass | null {
  const millilitres = inMillilitres(instrument.capacity)
  const tolerance = inMillilitres(instrument.tolerance)
  if (millilitres === null || tolerance === null) return null
  return (['A', 'B'] as const).find((kind) => cylinderTolerance(millilitres, kind) === tolerance) ?? null
}

function inMillilitres(value: Entry | null): number | null {
  if (value === null || UNITS[value.unit as UnitName].dimension !== 'volume') return null
  return convertExactly(value.value, value.unit, 'mL').toNumber()
}

export const addInstrument = (instruments: Instruments, instrument: Instrument): Instruments => [
  ...instruments,
  instrument,
]

export const changeInstrument = (
  instruments: Instruments,
  id: Id,
  facts: Partial<Omit<Instrument, 'id'>>,
): Instruments => changeById(instruments, id, (instrument) => ({ ...instrument, ...facts }))

export const setCylinderClass = (instruments: Instruments, id: Id, kind: CylinderClass): Instruments =>
  changeById(instruments, id, (instrument) => withCylinderClass(instrument, kind))

export const removeInstrument = (instruments: Instruments, id: Id): Instruments => removeById(instruments, id)
