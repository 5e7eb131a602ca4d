import type { EntryOf, Site } from '#core/records/index'
import { UNITS } from '#core/units/dimensions'

export interface RinseTemperature {
  readonly entry: EntryOf<'temperature'>
  readonly from: 'reading' | 'plate'
}

/** The rinse a site's water becomes: its last reading at any machine, else the first data plate that states one. */
export function rinseTemperature(site: Site): RinseTemperature | null {
  const last = site.visits
    .flatMap((visit) => visit.readings)
    .filter((reading) => reading.kind === 'rinse-temperature' && reading.value !== null)
    .toSorted((a, b) => (a.at < b.at ? -1 : 1))
    .at(-1)
  const value = last?.value ?? null
  if (value !== null && UNITS[value.unit].dimension === 'temperature')
    return { entry: value as EntryOf<'temperature'>, from: 'reading' }
  const plate = site.machines
    .map((machine) => machine.dataPlate.rinseTemperatureMin)
    .find((entry) => entry !== null)
  return plate === undefined || plate === null ? null : { entry: plate, from: 'plate' }
}
