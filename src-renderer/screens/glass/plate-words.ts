import type { PlateWords } from '#core/glass/words/tests'
import type { Machine } from '#core/records/index'
import { formatEntry } from '#core/units/format'
import type { DecimalSign } from '#core/units/parse'

/** The numbers of the machine's own data plate as they are shown; null where the record has none. */
export function plateWords(machine: Machine | null, sign: DecimalSign): PlateWords {
  const plate = machine?.dataPlate
  const least = plate?.rinsePressureMin ?? null
  const most = plate?.rinsePressureMax ?? null
  const heat = plate?.rinseTemperatureMin ?? null
  return {
    rinseAtLeast: heat === null ? null : formatEntry(heat, sign),
    pressure:
      least === null || most === null ? null : `${formatEntry(least, sign)} to ${formatEntry(most, sign)}`,
  }
}
