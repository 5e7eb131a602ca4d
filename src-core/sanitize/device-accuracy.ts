import type { Instrument } from '../records'
import { UNITS, type UnitName } from '../units/dimensions'
import { exactFactor } from '../units/factor'
import { readNumber } from '../units/read'

/**
 * How far a reading may be off when nobody has said better: the accuracy the code asks of the devices. Thermometers
 * ±1.5 °C, or ±3 °F where only in Fahrenheit (Food Code 4-203.12); pressure gauges ±14 kPa, ±2 psi (4-203.13); pH
 * papers and meters ±0.2 (common practice). Both sections from memory.
 */
const ASSUMED: { readonly [U in UnitName]?: number } = {
  degC: 1.5,
  degF: 3,
  kPa: 14,
  psi: 2,
  bar: 0.14,
  pH: 0.2,
}

/**
 * Half-width of a reading in `unit`: the tolerance of the one instrument of its kind in the list, when there is exactly
 * one and it states a tolerance, else the accuracy the code asks for. 0 for units neither speaks of.
 */
export function halfWidthOf(unit: UnitName, instruments: readonly Instrument[] = []): number {
  const kind = kindFor(unit)
  const own = instruments.filter((instrument) => instrument.kind === kind)
  const tolerance = own.length === 1 ? (own[0]?.tolerance ?? null) : null
  if (tolerance !== null && UNITS[tolerance.unit].dimension === UNITS[unit].dimension) {
    const value = readNumber(tolerance.value, 'instrument.tolerance', { low: 0 })
    // a tolerance is a difference: no offset between the temperature scales
    if (value.ok) return exactFactor(tolerance.unit).times(value.value).div(exactFactor(unit)).toNumber()
  }
  return ASSUMED[unit] ?? 0
}

function kindFor(unit: UnitName): Instrument['kind'] | null {
  switch (UNITS[unit].dimension) {
    case 'temperature':
      return 'thermometer'
    case 'pressure':
      return 'pressure-gauge'
    case 'pH':
      return 'pH-meter'
    default:
      return null
  }
}
