import type { Machine, ReadingKind } from '#core/records/index'
import type { Measured } from '../../../fields/units-for'

export interface ReadingRow {
  readonly kind: ReadingKind
  readonly label: string
  /** what is measured; null for a bare count */
  readonly measured: Measured | null
  readonly unit?: string
}

const ROWS: readonly ReadingRow[] = [
  { kind: 'rack-counter', label: 'Rack counter', measured: null, unit: 'racks' },
  { kind: 'ware-temperature', label: 'Temperature at the ware', measured: 'temperature' },
  { kind: 'rinse-volume', label: 'Rinse water of one rack, measured', measured: 'water' },
  { kind: 'hardness-supply', label: 'Hardness of the supply', measured: 'hardness' },
  { kind: 'hardness-rinse', label: 'Hardness of the rinse water', measured: 'hardness' },
  { kind: 'solids-rinse', label: 'Dissolved solids of the rinse water', measured: 'solids' },
  { kind: 'conductivity-rinse', label: 'Conductivity of the rinse water', measured: 'conductivity' },
  { kind: 'pH-rinse', label: 'pH of the rinse water', measured: null, unit: 'pH' },
  { kind: 'racks-since-fill', label: 'Racks since the tank was filled', measured: null, unit: 'racks' },
]

/** Readings worth taking at a machine, beyond those the conditions ask for. */
export const readingRows = (machine: Machine): readonly ReadingRow[] =>
  ROWS.filter((row) => row.kind !== 'racks-since-fill' || machine.wash.kind === 'tank').filter(
    (row) => row.kind !== 'ware-temperature' || machine.sanitizing === 'hot-water',
  )
