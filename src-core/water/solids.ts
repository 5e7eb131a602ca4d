import { all, ok, within, type Outcome } from '../outcome'
import type { Estimate } from '../statistics/estimate'
import { estimate } from '../statistics/make-estimate'
import { rectangular } from '../statistics/rectangular'

/** mg/L of dissolved solids per µS/cm at 25 °C, usual value and how far waters differ. Source: water-quality pages. */
export const SOLIDS_FACTOR = { usual: 0.64, least: 0.55, most: 0.75 } as const

/**
 * Dissolved solids from conductivity at 25 °C, mg/L: factor x EC. What a "TDS pen" shows is this. The doubt is that of
 * the factor, 0.55 to 0.75 from water to water. `conductivity` µS/cm, 0 to 100 000.
 *
 * Problems: a number out of range. Source: several water-quality pages, 0.64 usual.
 */
export function solidsFromConductivity(
  conductivity: number,
  factor: number = SOLIDS_FACTOR.usual,
): Outcome<Estimate<'mg/L'>> {
  const read = all([
    within(conductivity, 0, 100_000, 'water.conductivity', 'uS/cm'),
    within(factor, 0.4, 1, 'water.factor', ''),
  ])
  if (!read.ok) return read
  const halfWidth = ((SOLIDS_FACTOR.most - SOLIDS_FACTOR.least) / 2) * conductivity
  return estimate(factor * conductivity, 'mg/L', [{ source: 'kit-factor', standard: rectangular(halfWidth) }])
}

/**
 * Part of bicarbonate that is left as carbonate when water dries, by mass: M(CO3) / 2 M(HCO3) = 60.009 / 122.034.
 * Source: molar masses (IUPAC abridged weights, from memory).
 */
export const BICARBONATE_LEFT = 60.009 / 122.034

/**
 * What dried water leaves, mg/L, when `bicarbonate` mg/L of its dissolved solids lose carbon dioxide and water.
 * Problems: a number out of range, or more bicarbonate than solids.
 */
export function driedSolids(solids: number, bicarbonate: number): Outcome<number> {
  const read = all([
    within(solids, 0, 100_000, 'water.solids', 'mg/L'),
    within(bicarbonate, 0, Number.isFinite(solids) ? Math.max(0, solids) : 0, 'water.alkalinity', 'mg/L'),
  ])
  return read.ok ? ok(read.value[0] - (1 - BICARBONATE_LEFT) * read.value[1]) : read
}

/** Bicarbonate, mg/L, of an alkalinity in mg/L as CaCO3 below pH 8.3: 61.017 / 50.043. Source: equivalent masses. */
export const bicarbonateOf = (alkalinity: number): number =>
  Number.isFinite(alkalinity) ? (Math.max(0, Math.min(1e9, alkalinity)) * 61.017) / 50.043 : 0
