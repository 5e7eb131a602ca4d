/** A value and the half-width of its 95 % interval, in one unit with the other. */
export interface Measured {
  readonly value: number
  readonly expanded: number
}

/**
 * E_n score of two independent measurements: |a - b| / sqrt(Ua^2 + Ub^2). Above 1 they differ by more than both
 * uncertainties allow. Conservative when both share an error, such as one cylinder. Null when neither has any
 * uncertainty and they differ. Source: ISO 13528 (from memory), as used in interlaboratory comparisons.
 */
export function enScore(a: Measured, b: Measured): number | null {
  const apart = Math.abs(a.value - b.value)
  const score = apart / Math.hypot(a.expanded, b.expanded)
  return apart === 0 ? 0 : Number.isFinite(score) ? score : null
}
