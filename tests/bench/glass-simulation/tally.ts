import { CAUSE_IDS, CAUSES, type CauseId } from '#core/glass/causes'
import { isEnough, MOST_TESTS } from '#core/glass/diagnose'
import type { GlassModel } from '#core/glass/model'
import type { Ranking } from '#core/glass/rank'
import { seededRandom } from '../../support/seeded-random'
import type { Habits } from './mistakes'
import { play, type Order } from './operator'
import type { World } from './worlds'

export interface Setting {
  readonly world: World
  readonly habits: Habits
  readonly order: Order
  readonly model: GlassModel
  readonly kitchensPerCause: number
  readonly seed: number
  readonly mostTests: number
}

export interface Tally {
  /** part of kitchens whose true cause stands first or second after 0, 1, 2, ... tests; every cause counts alike */
  readonly found: readonly number[]
  /** the same with causes as common as their priors say */
  readonly foundByPrior: readonly number[]
  /** by cause, after five tests */
  readonly byCause: Readonly<Record<CauseId, number>>
  /** confusion[true cause][first-ranked cause] after five tests, parts of 1 */
  readonly confusion: Readonly<Record<CauseId, Readonly<Record<CauseId, number>>>>
  /** tests asked until the true cause stood first or second and stayed there; a miss counts as `mostTests` + 1 */
  readonly meanTests: number
  /** stopping as the screen does, at a clear lead or after five tests: tests asked and part found */
  readonly stopped: { readonly meanTests: number; readonly found: number }
}

export function tally(setting: Setting): Tally {
  const random = seededRandom(setting.seed)
  const rows = CAUSE_IDS.map((cause) => ({
    cause,
    runs: Array.from({ length: setting.kitchensPerCause }, () =>
      play(
        setting.world(cause, random),
        setting.habits,
        setting.order,
        setting.mostTests,
        setting.model,
        random,
      ),
    ),
  }))
  const share = (cause: CauseId, runs: readonly (readonly Ranking[])[], after: number): number =>
    mean(runs.map((run) => (isFound(at(run, after), cause) ? 1 : 0)))
  const counts = Array.from({ length: setting.mostTests + 1 }, (_, after) => after)
  return {
    found: counts.map((after) => mean(rows.map(({ cause, runs }) => share(cause, runs, after)))),
    foundByPrior: counts.map((after) =>
      rows.reduce((sum, { cause, runs }) => sum + priorOf(cause) * share(cause, runs, after), 0),
    ),
    byCause: byCause((cause) => share(cause, runsOf(rows, cause), MOST_TESTS)),
    confusion: byCause((cause) =>
      byCause((first) =>
        mean(runsOf(rows, cause).map((run) => (at(run, MOST_TESTS)?.causes[0]?.cause === first ? 1 : 0))),
      ),
    ),
    meanTests: mean(
      rows.flatMap(({ cause, runs }) =>
        runs.map((run) => {
          const lastMiss = run.findLastIndex((ranking) => !isFound(ranking, cause))
          return lastMiss === run.length - 1 ? setting.mostTests + 1 : lastMiss + 1
        }),
      ),
    ),
    stopped: stopped(rows),
  }
}

type Rows = readonly { readonly cause: CauseId; readonly runs: readonly (readonly Ranking[])[] }[]

function stopped(rows: Rows): Tally['stopped'] {
  const ends = rows.flatMap(({ cause, runs }) =>
    runs.map((run) => {
      const first = run.findIndex((ranking, tests) => isEnough(tests, ranking))
      const asked = Math.min(first < 0 ? MOST_TESTS : first, MOST_TESTS, run.length - 1)
      return { asked, found: isFound(at(run, asked), cause) ? 1 : 0 }
    }),
  )
  return { meanTests: mean(ends.map((end) => end.asked)), found: mean(ends.map((end) => end.found)) }
}

const runsOf = (rows: Rows, cause: CauseId) => rows.find((row) => row.cause === cause)?.runs ?? []
const at = (run: readonly Ranking[], after: number): Ranking | undefined =>
  run[Math.min(after, run.length - 1)]
const isFound = (ranking: Ranking | undefined, cause: CauseId): boolean =>
  ranking?.causes.slice(0, 2).some((row) => row.cause === cause) ?? false
const priorOf = (cause: CauseId): number => CAUSES.find(({ id }) => id === cause)?.prior ?? 0
const byCause = <T>(value: (cause: CauseId) => T): Readonly<Record<CauseId, T>> =>
  Object.fromEntries(CAUSE_IDS.map((cause) => [cause, value(cause)])) as Record<CauseId, T>
const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length)
