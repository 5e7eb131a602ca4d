export interface Contribution {
  /** standard uncertainty in the unit of the result */
  readonly standard: number
  /** null: infinitely many */
  readonly degreesOfFreedom: number | null
}

/** Root of the sum of squares. */
export const combine = (lines: readonly Contribution[]): number =>
  Math.hypot(...lines.map((line) => line.standard))

/**
 * Welch-Satterthwaite effective degrees of freedom of independent contributions; null for infinitely many. Written on
 * shares of the variance, so that no fourth power overflows. Not cut to a whole number: the quantile takes any.
 * `combined`: what the lines combine to, where that is known already.
 * Source: JCGM 100:2008 (GUM) G.4.1, equation G.2b.
 */
export function effectiveDegreesOfFreedom(
  lines: readonly Contribution[],
  combined = combine(lines),
): number | null {
  if (!(combined > 0)) return null
  let inverse = 0
  for (const line of lines) {
    if (line.degreesOfFreedom === null) continue
    const share = (line.standard / combined) ** 2
    inverse += (share * share) / Math.max(1, line.degreesOfFreedom)
  }
  const effective = 1 / inverse
  return Number.isFinite(effective) ? effective : null
}
