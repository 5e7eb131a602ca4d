import { all, ok, within, type Outcome } from '../outcome'

export interface WaterSample {
  readonly pH: number
  /** °C of the water the index is for: the rinse, not the tap */
  readonly celsius: number
  /** mg/L */
  readonly solids: number
  /** calcium hardness, mg/L as CaCO3 */
  readonly calcium: number
  /** mg/L as CaCO3 */
  readonly alkalinity: number
}

export interface Saturation {
  /** the four terms, as handbooks print them */
  readonly a: number
  readonly b: number
  readonly c: number
  readonly d: number
  /** pH at which this water would be in balance with lime */
  readonly saturationPH: number
  readonly langelier: number
  readonly ryznar: number
  readonly puckorius: number
}

/**
 * Saturation indices of a water at a temperature:
 * pHs = (9.3 + A + B) - (C + D), A = (log10 TDS - 1)/10, B = -13.12 log10(t + 273) + 34.55,
 * C = log10 Ca - 0.4, D = log10 alkalinity; Langelier = pH - pHs; Ryznar = 2 pHs - pH;
 * Puckorius = 2 pHs - (1.465 log10 alkalinity + 4.54).
 * The handbooks use 273, not 273.15; 273.15 would lower pHs by about 0.003.
 *
 * Valid: pH 4 to 11, 0 to 95 °C, solids 1 to 10 000, calcium and alkalinity 1 to 5000. Outside: a problem that names it.
 * Source: Langelier (1936) in the log-sum form of water-treatment handbooks, read in a secondary page.
 */
export function saturation(sample: WaterSample): Outcome<Saturation> {
  const read = all([
    within(sample.pH, 4, 11, 'water.pH', 'pH'),
    within(sample.celsius, 0, 95, 'water.temperature', 'degC'),
    within(sample.solids, 1, 10_000, 'water.solids', 'mg/L'),
    within(sample.calcium, 1, 5000, 'water.calcium', 'mg/L-CaCO3'),
    within(sample.alkalinity, 1, 5000, 'water.alkalinity', 'mg/L-CaCO3'),
  ])
  if (!read.ok) return read
  const [pH, celsius, solids, calcium, alkalinity] = read.value
  const a = (Math.log10(solids) - 1) / 10
  const b = -13.12 * Math.log10(celsius + 273) + 34.55
  const c = Math.log10(calcium) - 0.4
  const d = Math.log10(alkalinity)
  const saturationPH = 9.3 + a + b - (c + d)
  return ok({
    a,
    b,
    c,
    d,
    saturationPH,
    langelier: pH - saturationPH,
    ryznar: 2 * saturationPH - pH,
    puckorius: 2 * saturationPH - (1.465 * d + 4.54),
  })
}

export type ScaleTendency = 'leaves-scale' | 'near-balance' | 'dissolves-scale'

/**
 * What a Langelier index says of hot rinse water: above 0.3 scale is left behind, below -0.3 scale and metal are taken
 * up, between them neither much. The width of 0.3 is judgement: the index is not known better.
 */
export const scaleTendency = (langelier: number): ScaleTendency =>
  langelier > 0.3 ? 'leaves-scale' : langelier < -0.3 ? 'dissolves-scale' : 'near-balance'
