import { testFlow } from '../drawdown/test-flow'
import type { TestConditions } from '../drawdown/types'
import { chain, ok, type Outcome } from '../outcome'
import type { Test } from '../records'
import type { DecimalSign } from '../units/parse'
import { assumptionsOf } from './test-assumptions'
import type { Working, WorkingLine } from './types'
import { line, put } from './working'

/**
 * The working of the flow of a series, mL/min: volumes over times, with what the flow rests on.
 * Problems: those of `testFlow`.
 */
export function explainFlow(
  test: Test,
  conditions: TestConditions,
  sign: DecimalSign = 'point',
): Outcome<Working> {
  const worked = testFlow(test, conditions)
  return chain(worked.flow, (flow) => {
    const good = worked.runs.flatMap((run, i) =>
      run.excluded === null && run.volume.ok && run.seconds.ok
        ? [{ number: i + 1, volume: run.volume.value, seconds: run.seconds.value }]
        : [],
    )
    const over = (pick: (run: { readonly volume: number; readonly seconds: number }) => number): string =>
      good.map((run) => put(pick(run), sign)).join(' + ')
    return ok({
      title: 'Flow of the pump',
      formula: 'q = 60 × (V1 + V2 + …) / (t1 + t2 + …)',
      inputs: good.flatMap((run): readonly WorkingLine[] => [
        line(`V${run.number}`, `Volume of run ${run.number}`, run.volume, 'mL'),
        line(`t${run.number}`, `Time of run ${run.number}`, run.seconds, 's'),
      ]),
      substituted: `q = 60 × (${over((run) => run.volume)}) / (${over((run) => run.seconds)})`,
      result: line('q', 'Flow', flow.value, 'mL/min'),
      source:
        'By definition; all volume over all time, so that a run counts by its length (ratio estimator, Cochran, Sampling Techniques, chapter 6; from memory).',
      assumptions: assumptionsOf(test, conditions, worked.runs),
    })
  })
}
