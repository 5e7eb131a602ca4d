import type { ReadingKind } from '#core/records/index'

export const READING_NAMES: Record<ReadingKind, string> = {
  'rack-counter': 'Rack counter',
  'rinse-temperature': 'Final rinse temperature',
  'wash-temperature': 'Wash temperature',
  'ware-temperature': 'Temperature at the ware',
  'rinse-pressure': 'Final rinse pressure',
  'supply-pressure': 'Supply pressure',
  'rinse-volume': 'Rinse water of one rack',
  'hardness-supply': 'Hardness, supply',
  'hardness-rinse': 'Hardness, rinse',
  'solids-rinse': 'Dissolved solids, rinse',
  'conductivity-rinse': 'Conductivity, rinse',
  'pH-rinse': 'pH, rinse',
  'racks-since-fill': 'Racks since the fill',
}
