/**
 * Published conversions. `factor` in full digits; `rounded` as printed, with the relative tolerance of its rounding.
 * NIST SP 811 (2008) Appendix B.8 was read in a transcription to seven digits; the exact digits are rebuilt from the
 * definitions given (inch = 25.4 mm, US gallon = 231 cubic inches, pound = 453.592 37 g, grain = pound/7000).
 */
export const CONVERSIONS = [
  { from: 'in', to: 'mm', factor: '25.4', source: 'NIST SP 811 (2008) B.8, exact' },
  { from: 'gal-us', to: 'L', factor: '3.785411784', source: 'NIST Handbook 44 Appendix C, exact' },
  { from: 'fl-oz-us', to: 'mL', factor: '29.5735295625', source: 'NIST SP 811 (2008) B.8, 1/128 US gal' },
  { from: 'gal-imp', to: 'L', factor: '4.54609', source: 'NIST SP 811 (2008) B.8, exact' },
  { from: 'fl-oz-imp', to: 'mL', factor: '28.4130625', source: 'NIST SP 811 (2008) B.8, 1/160 imp gal' },
  { from: 'lb', to: 'g', factor: '453.59237', source: 'NIST SP 811 (2008) B.8, exact' },
  { from: 'oz', to: 'g', factor: '28.349523125', source: 'NIST SP 811 (2008) B.8, 1/16 lb' },
  { from: 'bar', to: 'kPa', factor: '100', source: 'NIST SP 811 (2008) B.8, exact' },
  { from: 'min', to: 's', factor: '60', source: 'definition' },
  { from: 'kg', to: 'g', factor: '1000', source: 'definition' },
  { from: 'deg-fH', to: 'mg/L-CaCO3', factor: '10', source: 'definition: 10 mg CaCO3 per litre' },
] as const

export const ROUNDED_CONVERSIONS = [
  { from: 'psi', to: 'kPa', published: 6.894757, tolerance: 5e-7, source: 'NIST SP 811 (2008) B.8' },
  { from: 'gpg', to: 'mg/L-CaCO3', published: 17.11806, tolerance: 5e-6, source: 'NIST SP 811 (2008) B.8' },
  {
    from: 'mmol/L-CaCO3',
    to: 'mg/L-CaCO3',
    published: 100.09,
    tolerance: 5e-3,
    source: 'molar mass of CaCO3, IUPAC abridged weights',
  },
  { from: 'gal-us/min', to: 'L/min', published: 3.785412, tolerance: 5e-7, source: 'NIST SP 811 (2008) B.8' },
] as const

/** Degrees Fahrenheit and Celsius by the exact formula C = (F - 32)/1.8 (NIST SP 811 (2008) B.8). */
export const TEMPERATURES = [
  [32, 0],
  [-40, -40],
  [68, 20],
  [100, 37.77777777777778],
  [120, 48.88888888888889],
  [160, 71.11111111111111],
  [171, 77.22222222222223],
  [194, 90],
] as const
