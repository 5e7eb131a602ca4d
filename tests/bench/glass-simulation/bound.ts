import { CAUSE_IDS, CAUSES, type CauseId } from '#core/glass/causes'
import { MOST_TESTS } from '#core/glass/diagnose'
import { seededRandom } from '../../support/seeded-random'
import type { Habits } from './mistakes'
import { oracle } from './oracle'
import { physicalWorld } from './worlds'

export interface Bound {
  /** part of kitchens whose true cause is among the first two after 0, 1, 2, ... tests; every cause counts alike */
  readonly found: readonly number[]
  /** after five tests, with causes as common as their priors say */
  readonly foundByPrior: number
  /** after five tests, by cause */
  readonly byCause: Readonly<Record<CauseId, number>>
}

const share = (runs: readonly (readonly boolean[])[], after: number): number =>
  runs.filter((run) => run[Math.min(after, run.length - 1)] === true).length / Math.max(1, runs.length)

/** How often someone who knows the simulated kitchens to the last number has the true cause first or second. */
export function bound(kitchensPerCause: number, habits: Habits, seed: number, drawn = 400): Bound {
  const expert = oracle(drawn, habits, seed + 1, 0)
  const random = seededRandom(seed)
  const rows = CAUSE_IDS.map((cause) => ({
    cause,
    runs: Array.from({ length: kitchensPerCause }, () =>
      expert
        .play(physicalWorld(cause, random), habits, MOST_TESTS + 6, random)
        .map((order) => order.slice(0, 2).includes(cause)),
    ),
  }))
  const counts = Array.from({ length: MOST_TESTS + 7 }, (_, after) => after)
  return {
    found: counts.map(
      (after) => rows.reduce((sum, { runs }) => sum + share(runs, after), 0) / CAUSE_IDS.length,
    ),
    foundByPrior: rows.reduce(
      (sum, { cause, runs }) =>
        sum + (CAUSES.find(({ id }) => id === cause)?.prior ?? 0) * share(runs, MOST_TESTS),
      0,
    ),
    byCause: Object.fromEntries(rows.map(({ cause, runs }) => [cause, share(runs, MOST_TESTS)])) as Record<
      CauseId,
      number
    >,
  }
}
