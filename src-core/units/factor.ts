import { Decimal } from './decimal'
import { UNITS, type UnitName } from './dimensions'

const made = new Map<UnitName, Decimal>()

/** The factor from a unit to the canonical unit of its dimension, to 40 significant digits. */
export function exactFactor(unit: UnitName): Decimal {
  const known = made.get(unit)
  if (known !== undefined) return known
  const [above = '1', below = '1'] = UNITS[unit].factor.split('/')
  const factor = new Decimal(above).div(below)
  made.set(unit, factor)
  return factor
}
