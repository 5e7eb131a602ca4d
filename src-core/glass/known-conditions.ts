import type { EntryOf } from '../records'
import { inUnit } from '../units/quantity'
import { read, readNumber } from '../units/read'
import { fact, fromRecord, type KnownFact, type KnownInput } from './known-types'
import { latestCheck, latestCount, latestReading } from './known-readings'

/** Rinse temperature and pressure against the data plate, jets, and racks since the fill. */
export const dryingFacts = (input: KnownInput): readonly KnownFact[] => [
  ...temperature(input),
  ...pressure(input),
  ...jets(input),
  ...racksSinceFill(input),
]

function temperature(input: KnownInput): readonly KnownFact[] {
  const found = latestReading(input, 'rinse-temperature')
  const degrees = found === null ? null : read(found.entry as EntryOf<'temperature'>, 'reading', {})
  const least = read(input.machine.dataPlate.rinseTemperatureMin, 'machine.dataPlate.rinseTemperatureMin')
  if (found !== null && degrees?.ok === true && least.ok) {
    const margin = inUnit(degrees.value, 'degC') - inUnit(least.value, 'degC')
    return [
      fact('rinse-temperature', margin, found.on, input.today, [
        fromRecord('rinse-cool', margin < 0 ? 'yes' : 'no'),
      ]),
    ]
  }
  const check = latestCheck(input, 'rinse-temperature')
  return check === null
    ? []
    : [
        fact('rinse-temperature', null, check.on, input.today, [
          fromRecord('rinse-cool', check.ok ? 'no' : 'yes'),
        ]),
      ]
}

function pressure(input: KnownInput): readonly KnownFact[] {
  const { rinsePressureMin, rinsePressureMax } = input.machine.dataPlate
  const found = latestReading(input, 'rinse-pressure')
  const shown = found === null ? null : read(found.entry as EntryOf<'pressure'>, 'reading', {})
  const least = read(rinsePressureMin, 'machine.dataPlate.rinsePressureMin')
  if (found !== null && shown?.ok === true && least.ok) {
    const most = read(rinsePressureMax, 'machine.dataPlate.rinsePressureMax')
    const margin = inUnit(shown.value, 'kPa') - inUnit(least.value, 'kPa')
    const bad = margin < 0 || (most.ok && inUnit(shown.value, 'kPa') > inUnit(most.value, 'kPa'))
    return [
      fact('rinse-pressure', margin, found.on, input.today, [fromRecord('pressure-bad', bad ? 'yes' : 'no')]),
    ]
  }
  const check = latestCheck(input, 'rinse-pressure')
  return check === null
    ? []
    : [
        fact('rinse-pressure', null, check.on, input.today, [
          fromRecord('pressure-bad', check.ok ? 'no' : 'yes'),
        ]),
      ]
}

function jets(input: KnownInput): readonly KnownFact[] {
  const check = latestCheck(input, 'jets-and-screens')
  return check === null
    ? []
    : [fact('jets', null, check.on, input.today, [fromRecord('jets-blocked', check.ok ? 'no' : 'yes')])]
}

/** Only the count of the same day counts: by tomorrow the tank is filled afresh. */
function racksSinceFill(input: KnownInput): readonly KnownFact[] {
  const found = latestCount(input, 'racks-since-fill')
  const perFill = racksOfOneFill(input)
  const racks = found === null ? null : readNumber(found.count, 'reading', { low: 0 })
  if (found === null || perFill === null || racks?.ok !== true) return []
  const part = racks.value / perFill
  return [
    fact('racks-since-fill', part, found.on, input.today, [
      fromRecord('racks-many', part > 1 ? 'yes' : 'no'),
    ]),
  ]
}

/** Racks a fill is meant to last: racks of a day over fills of a day. Null when either is unknown. */
export function racksOfOneFill({ machine }: Pick<KnownInput, 'machine'>): number | null {
  if (machine.wash.kind !== 'tank') return null
  const racks = readNumber(machine.racksPerDay, 'machine.racksPerDay', { above: 0 })
  const fills = readNumber(machine.wash.drainAndFillsPerDay, 'machine.wash.drainAndFillsPerDay', { above: 0 })
  return racks.ok && fills.ok ? racks.value / fills.value : null
}
