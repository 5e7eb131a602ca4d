import type { Settings } from '#core/records/index'
import type { UnitOf } from '#core/units/dimensions'

export type UnitSystem = Settings['units']

const DIMENSIONS = {
  caught: 'volume',
  weighed: 'mass',
  container: 'volume',
  water: 'volume',
  waterFlow: 'flow',
  seconds: 'duration',
  temperature: 'temperature',
  pressure: 'pressure',
  density: 'density',
  tubeWidth: 'length',
  lineLength: 'length',
  hardness: 'hardness',
  solids: 'solids',
  conductivity: 'conductivity',
} as const

export type Measured = keyof typeof DIMENSIONS
type UnitsOf<M extends Measured> = readonly [
  UnitOf<(typeof DIMENSIONS)[M]>,
  ...UnitOf<(typeof DIMENSIONS)[M]>[],
]

/** What is being measured, as a person would say it; each has its usual unit first in each system. */
const TABLE: { readonly [M in Measured]: Readonly<Record<UnitSystem, UnitsOf<M>>> } = {
  caught: {
    metric: ['mL', 'L', 'fl-oz-us', 'fl-oz-imp'],
    us: ['mL', 'fl-oz-us', 'L'],
    imperial: ['mL', 'fl-oz-imp', 'L'],
  },
  weighed: {
    metric: ['g', 'kg', 'oz', 'lb'],
    us: ['g', 'oz', 'lb', 'kg'],
    imperial: ['g', 'oz', 'lb', 'kg'],
  },
  container: {
    metric: ['L', 'mL', 'gal-us', 'gal-imp'],
    us: ['gal-us', 'L', 'fl-oz-us', 'mL'],
    imperial: ['L', 'gal-imp', 'fl-oz-imp', 'mL'],
  },
  water: { metric: ['L', 'mL', 'gal-us', 'gal-imp'], us: ['gal-us', 'L'], imperial: ['L', 'gal-imp'] },
  waterFlow: {
    metric: ['L/min', 'gal-us/min', 'gal-imp/min'],
    us: ['gal-us/min', 'L/min'],
    imperial: ['L/min', 'gal-imp/min'],
  },
  seconds: { metric: ['s', 'min'], us: ['s', 'min'], imperial: ['s', 'min'] },
  temperature: { metric: ['degC', 'degF'], us: ['degF', 'degC'], imperial: ['degC', 'degF'] },
  pressure: { metric: ['kPa', 'bar', 'psi'], us: ['psi', 'bar', 'kPa'], imperial: ['psi', 'bar', 'kPa'] },
  density: {
    metric: ['g/mL', 'kg/L', 'lb/gal-us'],
    us: ['g/mL', 'lb/gal-us', 'kg/L'],
    imperial: ['g/mL', 'kg/L'],
  },
  tubeWidth: { metric: ['mm', 'in'], us: ['in', 'mm'], imperial: ['mm', 'in'] },
  lineLength: { metric: ['m', 'ft', 'cm'], us: ['ft', 'm', 'in'], imperial: ['m', 'ft'] },
  hardness: {
    metric: ['mg/L-CaCO3', 'deg-dH', 'deg-fH', 'gpg', 'deg-Clark', 'mmol/L-CaCO3'],
    us: ['gpg', 'mg/L-CaCO3', 'deg-dH', 'deg-fH'],
    imperial: ['mg/L-CaCO3', 'deg-Clark', 'deg-dH', 'gpg'],
  },
  solids: { metric: ['mg/L'], us: ['mg/L'], imperial: ['mg/L'] },
  conductivity: { metric: ['uS/cm', 'mS/cm'], us: ['uS/cm', 'mS/cm'], imperial: ['uS/cm', 'mS/cm'] },
}

/** Units offered for a measured thing, usual one first. */
export const unitsFor = <M extends Measured>(what: M, system: UnitSystem): UnitsOf<M> => TABLE[what][system]
