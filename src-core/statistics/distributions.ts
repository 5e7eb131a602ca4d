import normalCdfOf from '@stdlib/stats-base-dists-normal-cdf'
import normalQuantileOf from '@stdlib/stats-base-dists-normal-quantile'
import tCdfOf from '@stdlib/stats-base-dists-t-cdf'
import tQuantileOf from '@stdlib/stats-base-dists-t-quantile'

/**
 * The only importer of the statistics library. It returns NaN outside its domain and 0 for the t quantile beyond some
 * 1e16 degrees of freedom, so every argument is brought into the range where it is right. From 1e9 degrees of freedom
 * on, t and normal agree to nine digits and the normal one is used.
 */
const NORMAL_FROM = 1e9
const SMALLEST_P = 1e-12

/** Quantile of Student's t. `p` 0..1, `df` > 0 or null for infinitely many (the normal distribution). */
export function tQuantile(p: number, df: number | null): number {
  const inside = probability(p)
  return isNormal(df) ? normalQuantileOf(inside, 0, 1) : tQuantileOf(inside, atLeastOne(df))
}

/** Probability that a t variable is at most `t`. */
export function tCdf(t: number, df: number | null): number {
  const at = bounded(t)
  return isNormal(df) ? normalCdfOf(at, 0, 1) : tCdfOf(at, atLeastOne(df))
}

/** Two-sided p value of a t statistic. */
export const tTwoSided = (t: number, df: number | null): number =>
  Math.min(1, 2 * tCdf(-Math.abs(bounded(t)), df))

/** Quantile of the standard normal distribution. */
export const normalQuantile = (p: number): number => normalQuantileOf(probability(p), 0, 1)

/** Probability that a standard normal variable is at most `z`. */
export const normalCdf = (z: number): number => normalCdfOf(bounded(z), 0, 1)

/**
 * Coverage factor for a two-sided 95 % interval, t(0.975, df). Source: JCGM 100:2008 (GUM) G.3 and G.6.4.
 */
export const coverage95 = (df: number | null): number => (df === null ? NORMAL_95 : tQuantile(0.975, df))

const isNormal = (df: number | null): df is null => df === null || !(df < NORMAL_FROM)
// An effective number of degrees of freedom is never below the smallest that went in, and that is at least 1.
const atLeastOne = (df: number): number => Math.max(1, df)
const probability = (p: number): number =>
  Number.isFinite(p) ? Math.min(1 - SMALLEST_P, Math.max(SMALLEST_P, p)) : 0.5
const NORMAL_95 = normalQuantileOf(0.975, 0, 1)
const bounded = (x: number): number => (Number.isNaN(x) ? 0 : Math.min(1e100, Math.max(-1e100, x)))
