import type { CodeLimit, CodeLimits } from './types'

/** The step of the chlorine table a strength falls in, and the water temperature it then asks for. */
export interface ChlorineRow {
  readonly step: 'low' | 'middle' | 'high'
  readonly temperature: CodeLimit
}

/**
 * The row of the table for `mgPerLitre` available chlorine at a pH; null below its first step or above its highest pH.
 * Strengths between two printed ranges (49 to 50, 99 to 100 mg/L) count as the lower row, which asks for hotter water.
 * An unknown pH counts as above 8: the column that asks for hotter water.
 *
 * Source: Food Code 4-501.114(A), as replaced in the settings.
 */
export function chlorineRow(mgPerLitre: number, pH: number | null, limits: CodeLimits): ChlorineRow | null {
  const at = (id: keyof CodeLimits): number => limits[id].figures[0].value
  if (!(mgPerLitre >= at('chlorine-low-step'))) return null
  if (pH !== null && !(pH <= at('chlorine-pH-max'))) return null
  const mild = pH !== null && pH <= at('chlorine-pH-mild')
  const column = mild ? 'pH-8' : 'pH-10'
  const step =
    mgPerLitre >= at('chlorine-high-step')
      ? 'high'
      : mgPerLitre >= at('chlorine-middle-step')
        ? 'middle'
        : 'low'
  return { step, temperature: limits[`chlorine-${step}-temperature-${column}`] }
}
