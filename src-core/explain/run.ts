import { correctionFor } from '../drawdown/correction'
import { rawRun } from '../drawdown/run-volume'
import { testFlow } from '../drawdown/test-flow'
import type { TestConditions } from '../drawdown/types'
import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { Run, Test } from '../records'
import type { DecimalSign } from '../units/parse'
import { inUnit } from '../units/quantity'
import { read } from '../units/read'
import { assumptionsOf } from './test-assumptions'
import type { Working, WorkingLine } from './types'
import { line, put } from './working'

/** The working of one run's volume and flow. Problems: those of the run and of its correction. */
export function explainRun(
  run: Run,
  test: Test,
  conditions: TestConditions,
  sign: DecimalSign = 'point',
): Outcome<Working> {
  const where = `runs.${Math.max(0, test.runs.indexOf(run))}`
  const worked = testFlow({ ...test, runs: [{ ...run, excluded: null }] }, conditions).runs[0]
  if (worked === undefined) return fail({ code: 'no-runs' })
  return chain(
    all([
      correctionFor(test, conditions),
      rawRun(run, test.method, null, where),
      worked.flow,
      worked.seconds,
    ]),
    ([correction, raw, q, t]) => {
      const weighed = test.method === 'weighed'
      const [factor, formula, unit]: readonly [WorkingLine | null, string, string] = weighed
        ? [
            line('ρ', 'Density of the product', correction.density?.value ?? 1, 'g/mL'),
            'q = 60 × m / (ρ × t)',
            'g',
          ]
        : correction.factor === 1
          ? [null, 'q = 60 × V / t', 'mL']
          : [
              line('k', 'Part of the reading that was really drawn', correction.factor),
              'q = 60 × k × V / t',
              'mL',
            ]
      const amount = put(raw.amount, sign)
      const by = factor === null ? '' : put(factor.value, sign)
      return ok({
        title: 'Flow of one run',
        formula,
        inputs: [
          line(weighed ? 'm' : 'V', weighed ? 'Mass moved' : 'Volume read', raw.amount, unit),
          ...(factor === null ? [] : [factor]),
          line('t', 'Time', t, 's'),
        ],
        substituted: weighed
          ? `q = 60 × ${amount} / (${by} × ${put(t, sign)})`
          : `q = 60 × ${by === '' ? '' : `${by} × `}${amount} / ${put(t, sign)}`,
        result: line('q', 'Flow', q, 'mL/min'),
        source: weighed
          ? 'By definition.'
          : 'By definition; k = 1 − (do/Di)², from the ring of liquid that falls.',
        assumptions: assumptionsOf(test, conditions, []),
      })
    },
  )
}

/** The working of the tube factor of a draw-down. Problems: those of `correctionFor`; `missing` when no tube stood in it. */
export function explainTubeFactor(
  test: Test,
  conditions: TestConditions,
  sign: DecimalSign = 'point',
): Outcome<Working> {
  return chain(
    all([
      read(conditions.tube.outsideDiameter, 'pump.tube.outsideDiameter', { above: 0 }),
      read(conditions.instrument?.bore ?? null, 'instrument.bore', { above: 0 }),
      correctionFor(test, conditions),
    ]),
    ([outside, bore, { tube }]) => {
      const [d, D] = [inUnit(outside, 'mm'), inUnit(bore, 'mm')]
      return ok({
        title: 'Tube standing in the cylinder',
        formula: 'k = 1 − (do / Di)²',
        inputs: [
          line('do', 'Outside diameter of the tube', d, 'mm'),
          line('Di', 'Bore of the cylinder', D, 'mm'),
        ],
        substituted: `k = 1 − (${put(d, sign)} / ${put(D, sign)})²`,
        result: line('k', 'Part of the reading that was really drawn', tube.factor),
        source: 'Derived: only the ring of liquid around the tube falls.',
        assumptions: ['The tube stood in the cylinder at both readings and is as wide all along.'],
      })
    },
  )
}
