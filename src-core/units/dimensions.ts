/**
 * Every unit the program knows. One row: what it measures, the exact factor to the canonical unit of that
 * dimension (decimal digits, or a fraction of two where the decimal does not end), and how it is written.
 *
 * Sources: NIST SP 811 (2008) Appendix B.8 and NIST Handbook 44 Appendix C for gallon, fluid ounce, pound,
 * ounce, grain, psi, bar. Imperial gallon: exact by definition, 4.546 09 L. psi: lbf = 0.453 592 37 kg x 9.806 65 m/s2
 * over the square of 25.4 mm. Hardness degrees: °fH by definition 10 mg CaCO3 per litre; °dH 10 mg CaO per litre and
 * °Clark one grain per imperial gallon, both as CaCO3; mmol/L by the molar mass of CaCO3 (IUPAC abridged weights).
 */
export const UNITS = {
  mL: { dimension: 'volume', factor: '1', offset: '0', symbol: 'mL' },
  L: { dimension: 'volume', factor: '1000', offset: '0', symbol: 'L' },
  'fl-oz-us': { dimension: 'volume', factor: '29.5735295625', offset: '0', symbol: 'US fl oz' },
  'fl-oz-imp': { dimension: 'volume', factor: '28.4130625', offset: '0', symbol: 'imp fl oz' },
  'gal-us': { dimension: 'volume', factor: '3785.411784', offset: '0', symbol: 'US gal' },
  'gal-imp': { dimension: 'volume', factor: '4546.09', offset: '0', symbol: 'imp gal' },

  g: { dimension: 'mass', factor: '1', offset: '0', symbol: 'g' },
  kg: { dimension: 'mass', factor: '1000', offset: '0', symbol: 'kg' },
  oz: { dimension: 'mass', factor: '28.349523125', offset: '0', symbol: 'oz' },
  lb: { dimension: 'mass', factor: '453.59237', offset: '0', symbol: 'lb' },

  s: { dimension: 'duration', factor: '1', offset: '0', symbol: 's' },
  min: { dimension: 'duration', factor: '60', offset: '0', symbol: 'min' },

  mm: { dimension: 'length', factor: '1', offset: '0', symbol: 'mm' },
  cm: { dimension: 'length', factor: '10', offset: '0', symbol: 'cm' },
  m: { dimension: 'length', factor: '1000', offset: '0', symbol: 'm' },
  in: { dimension: 'length', factor: '25.4', offset: '0', symbol: 'in' },
  ft: { dimension: 'length', factor: '304.8', offset: '0', symbol: 'ft' },

  'mL/min': { dimension: 'flow', factor: '1', offset: '0', symbol: 'mL/min' },
  'L/min': { dimension: 'flow', factor: '1000', offset: '0', symbol: 'L/min' },
  'fl-oz-us/min': { dimension: 'flow', factor: '29.5735295625', offset: '0', symbol: 'US fl oz/min' },
  'fl-oz-imp/min': { dimension: 'flow', factor: '28.4130625', offset: '0', symbol: 'imp fl oz/min' },
  'gal-us/min': { dimension: 'flow', factor: '3785.411784', offset: '0', symbol: 'US gal/min' },
  'gal-imp/min': { dimension: 'flow', factor: '4546.09', offset: '0', symbol: 'imp gal/min' },

  'g/mL': { dimension: 'density', factor: '1', offset: '0', symbol: 'g/mL' },
  'kg/L': { dimension: 'density', factor: '1', offset: '0', symbol: 'kg/L' },
  'lb/gal-us': { dimension: 'density', factor: '453.59237/3785.411784', offset: '0', symbol: 'lb/US gal' },

  degC: { dimension: 'temperature', factor: '1', offset: '0', symbol: '°C' },
  degF: { dimension: 'temperature', factor: '5/9', offset: '-32', symbol: '°F' },

  kPa: { dimension: 'pressure', factor: '1', offset: '0', symbol: 'kPa' },
  bar: { dimension: 'pressure', factor: '100', offset: '0', symbol: 'bar' },
  psi: { dimension: 'pressure', factor: '4.4482216152605/0.64516', offset: '0', symbol: 'psi' },

  'ppm-vv': { dimension: 'product-by-volume', factor: '1', offset: '0', symbol: 'ppm v/v product' },
  'percent-vv': { dimension: 'product-by-volume', factor: '10000', offset: '0', symbol: '% v/v product' },
  'mg/L-product': { dimension: 'product-by-mass', factor: '1', offset: '0', symbol: 'mg/L product' },
  'g/L-product': { dimension: 'product-by-mass', factor: '1000', offset: '0', symbol: 'g/L product' },
  'mg/L-active': { dimension: 'active-by-mass', factor: '1', offset: '0', symbol: 'mg/L active' },

  'mg/L-CaCO3': { dimension: 'hardness', factor: '1', offset: '0', symbol: 'mg/L as CaCO3' },
  gpg: { dimension: 'hardness', factor: '64.79891/3.785411784', offset: '0', symbol: 'grains/US gal' },
  'deg-dH': { dimension: 'hardness', factor: '17.848', offset: '0', symbol: '°dH' },
  'deg-fH': { dimension: 'hardness', factor: '10', offset: '0', symbol: '°fH' },
  'deg-Clark': { dimension: 'hardness', factor: '14.253768', offset: '0', symbol: '°Clark' },
  'mmol/L-CaCO3': { dimension: 'hardness', factor: '100.0869', offset: '0', symbol: 'mmol/L' },

  'mg/L': { dimension: 'solids', factor: '1', offset: '0', symbol: 'mg/L' },
  'uS/cm': { dimension: 'conductivity', factor: '1', offset: '0', symbol: 'µS/cm' },
  'mS/cm': { dimension: 'conductivity', factor: '1000', offset: '0', symbol: 'mS/cm' },

  'mL/rack': { dimension: 'dose', factor: '1', offset: '0', symbol: 'mL/rack' },
  'fl-oz-us/rack': { dimension: 'dose', factor: '29.5735295625', offset: '0', symbol: 'US fl oz/rack' },
  'fl-oz-imp/rack': { dimension: 'dose', factor: '28.4130625', offset: '0', symbol: 'imp fl oz/rack' },

  pH: { dimension: 'pH', factor: '1', offset: '0', symbol: 'pH' },
  percent: { dimension: 'share', factor: '1', offset: '0', symbol: '%' },
  drops: { dimension: 'drops', factor: '1', offset: '0', symbol: 'drops' },
  d: { dimension: 'days', factor: '1', offset: '0', symbol: 'days' },
} as const satisfies Record<string, UnitRow>

export interface UnitRow {
  readonly dimension: string
  /** canonical = (value + offset) x factor; digits, or `digits/digits` */
  readonly factor: string
  readonly offset: string
  readonly symbol: string
}

export type UnitName = keyof typeof UNITS
export type Dimension = (typeof UNITS)[UnitName]['dimension']
export type UnitOf<D extends Dimension> = {
  [U in UnitName]: (typeof UNITS)[U]['dimension'] extends D ? U : never
}[UnitName]
export type DimensionOf<U extends UnitName> = (typeof UNITS)[U]['dimension']

export const UNIT_NAMES = Object.keys(UNITS) as readonly UnitName[]

/** The units of one dimension, in table order. */
export const unitsOf = <D extends Dimension>(dimension: D): readonly UnitOf<D>[] =>
  UNIT_NAMES.filter((name) => UNITS[name].dimension === dimension) as unknown as readonly UnitOf<D>[]
