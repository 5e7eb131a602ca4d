import { fail, ok, type Outcome } from '../outcome'
import { meanAndSpread } from './mean-and-spread'

export interface IndividualsLimits {
  readonly mean: number
  readonly meanMovingRange: number
  readonly upper: number
  readonly lower: number
  readonly upperMovingRange: number
}

/** Control-chart factors for ranges of two, as printed to three places: ASTM E2587, Montgomery Appendix VI. */
const D2 = 1.128
const D4 = 3.267

/**
 * Control limits of single values in time order: mean +- 3 mean-moving-range / d2, in the unit of the values.
 * Source: NIST/SEMATECH e-Handbook 6.3.2.2.
 *
 * Problems: `too-few-runs` below two values, `outside-valid-range`.
 */
export function individualsLimits(values: readonly number[]): Outcome<IndividualsLimits> {
  if (values.length < 2) return fail({ code: 'too-few-runs', have: values.length, need: 2 })
  const level = meanAndSpread(values)
  if (!level.ok) return level
  const moves = values.slice(1).map((value, i) => Math.abs(value - (values[i] ?? value)))
  const ranges = meanAndSpread(moves)
  if (!ranges.ok) return fail({ code: 'cannot-compute', reason: 'outside-valid-range' })
  const mean = level.value.mean
  const meanMovingRange = ranges.value.mean
  const reach = (3 * meanMovingRange) / D2
  return ok({
    mean,
    meanMovingRange,
    upper: mean + reach,
    lower: mean - reach,
    upperMovingRange: D4 * meanMovingRange,
  })
}
