import { ok, type Outcome } from '../outcome'
import type { Entry, Instrument, Machine, Reading, ReadingKind } from '../records'
import { compareWithLimit } from './compare'
import { halfWidthOf } from './device-accuracy'
import { limitsOfMachine } from './limits-of-machine'
import type { CodeLimits, Limit, LimitAdvice } from './types'

/** A hot-water or pressure reading with every figure it stands against: the data plate first, then the code. */
export interface ReadingAdvice {
  readonly readingId: string
  readonly kind: ReadingKind
  readonly comparisons: Outcome<readonly LimitAdvice[]>
}

/**
 * What the figures say about the temperature and pressure readings of one machine. Advice with its source, never a
 * verdict: the data plate, the label and local code come before it. Readings no figure speaks of are left out.
 * `instruments` gives how far a reading may be off, where exactly one instrument of its kind is known.
 */
export function readingAdvice(
  machine: Machine,
  readings: readonly Reading[],
  limits: CodeLimits,
  instruments: readonly Instrument[] = [],
): readonly ReadingAdvice[] {
  return readings
    .filter((reading) => reading.machineId === machine.id)
    .flatMap((reading) => {
      const against = limitsFor(reading.kind, machine, limits)
      return against.length === 0 ? [] : [advise(reading, against, instruments)]
    })
}

function advise(
  reading: Reading,
  against: readonly Limit[],
  instruments: readonly Instrument[],
): ReadingAdvice {
  const found: LimitAdvice[] = []
  const named = { readingId: reading.id, kind: reading.kind }
  const width = reading.value === null ? 0 : halfWidthOf(reading.value.unit, instruments)
  for (const limit of against) {
    const advice = compareWithLimit(reading.value, limit, `reading.${reading.kind}`, width)
    if (!advice.ok) return { ...named, comparisons: advice }
    found.push(advice.value)
  }
  return { ...named, comparisons: ok(found) }
}

/** The figures for one kind of reading; the plate's stand first and the code's stay beside them. */
function limitsFor(kind: ReadingKind, machine: Machine, limits: CodeLimits): readonly Limit[] {
  const plate = machine.dataPlate
  const own = limitsOfMachine(machine, limits)
  switch (kind) {
    case 'wash-temperature':
      return of(onPlate('wash water', 'min', plate.washTemperatureMin), own.washTemperatureMin)
    case 'rinse-temperature':
      return of(
        onPlate('final rinse', 'min', plate.rinseTemperatureMin),
        onPlate('final rinse', 'max', plate.rinseTemperatureMax),
        own.rinseTemperatureMin,
        own.rinseTemperatureMax,
      )
    case 'ware-temperature':
      return of(own.wareTemperatureMin)
    case 'rinse-pressure':
      return of(
        onPlate('flowing rinse pressure', 'min', plate.rinsePressureMin),
        onPlate('flowing rinse pressure', 'max', plate.rinsePressureMax),
        own.rinsePressureMin,
        own.rinsePressureMax,
      )
    case 'supply-pressure':
      return of(limits['supply-pressure-min'], limits['supply-pressure-max'])
    default:
      return []
  }
}

const of = (...each: readonly (Limit | null)[]): readonly Limit[] => each.filter((limit) => limit !== null)

function onPlate(what: string, bound: 'min' | 'max', entry: Entry | null): Limit | null {
  const value = entry === null ? NaN : Number(entry.value)
  if (entry === null || entry.value === '' || !Number.isFinite(value)) return null
  return {
    id: 'data-plate',
    what: `${what}, on the data plate`,
    bound,
    figures: [{ value, unit: entry.unit }],
    source: 'the machine’s data plate, as recorded',
    how: 'record',
  }
}
