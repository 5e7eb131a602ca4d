import { chain, fail, ok, type Outcome } from '../outcome'
import { individualsLimits } from '../statistics/individuals-chart'
import { CHART_NEEDS } from './limits'
import type { Change, ChangeChart } from './types'

/**
 * Individuals chart of the change from left to found, percent, over the visits with nothing but time between.
 * Limits: mean +- 3 mean-moving-range/1.128 (NIST/SEMATECH e-Handbook 6.3.2.2).
 *
 * Problems: `too-few-runs` below five changes.
 */
export function changeChart(changes: readonly Change[]): Outcome<ChangeChart> {
  const plain = changes.filter((change) => change.across === 'nothing')
  if (plain.length < CHART_NEEDS) return fail({ code: 'too-few-runs', have: plain.length, need: CHART_NEEDS })
  const percents = plain.map((change) => 100 * change.relative)
  return chain(individualsLimits(percents), ({ mean, lower, upper }) =>
    ok({
      values: plain.map((change, i) => {
        const percent = percents[i] ?? 0
        return { day: change.to.day, percent, outside: percent < lower || percent > upper }
      }),
      mean,
      lower,
      upper,
    }),
  )
}
