import type { Machine } from '../records'
import type { CodeLimit, CodeLimits } from './types'

/** The hot-water and pressure limits that speak of one machine; null where the code says nothing about it. */
export interface MachineLimits {
  readonly washTemperatureMin: CodeLimit | null
  readonly rinseTemperatureMin: CodeLimit | null
  readonly rinseTemperatureMax: CodeLimit | null
  readonly rinsePressureMin: CodeLimit | null
  readonly rinsePressureMax: CodeLimit | null
  readonly wareTemperatureMin: CodeLimit | null
}

/**
 * Which rows of the table apply (Food Code 4-501.110, .112, .113, 4-703.11(B)). Undercounter and door machines are
 * stationary racks. A stationary rack counts as a single-temperature machine when its data plate asks for a rinse below
 * 180 °F: the record holds no other sign of it, and the plate is what the code itself points to. A machine that
 * sanitizes with a chemical has a wash minimum and no sanitizing-rinse temperature, pressure or ware temperature.
 */
export function limitsOfMachine(machine: Machine, limits: CodeLimits): MachineLimits {
  if (machine.sanitizing === 'chemical')
    return {
      washTemperatureMin: limits['wash-temperature-chemical'],
      rinseTemperatureMin: null,
      rinseTemperatureMax: null,
      rinsePressureMin: null,
      rinsePressureMax: null,
      wareTemperatureMin: null,
    }
  const single = isSingleTemperature(machine)
  return {
    washTemperatureMin: limits[washLimit(machine, single)],
    rinseTemperatureMin: limits[single ? 'rinse-temperature-stationary-single' : 'rinse-temperature-other'],
    rinseTemperatureMax: limits['rinse-temperature-max'],
    rinsePressureMin: limits['rinse-pressure-min'],
    rinsePressureMax: limits['rinse-pressure-max'],
    wareTemperatureMin: limits['ware-temperature-min'],
  }
}

function washLimit(machine: Machine, single: boolean) {
  if (machine.class === 'conveyor-single-tank') return 'wash-temperature-single-tank-conveyor'
  if (machine.class === 'conveyor-multi-tank') return 'wash-temperature-multi-tank-conveyor'
  return single ? 'wash-temperature-stationary-single' : 'wash-temperature-stationary-dual'
}

function isSingleTemperature(machine: Machine): boolean {
  const stationary = machine.class === 'undercounter' || machine.class === 'door'
  const plate = machine.dataPlate.rinseTemperatureMin
  if (!stationary || plate === null) return false
  const value = Number(plate.value)
  // below the plate's own unit's printed 180 °F (82 °C)
  return Number.isFinite(value) && value < (plate.unit === 'degF' ? 180 : 82)
}
