import { limitsFor } from '../drawdown/correction'
import type { RunResult, TestConditions } from '../drawdown/types'
import type { Test } from '../records'

/** What the flow of a test takes for granted, in plain words. */
export function assumptionsOf(
  test: Test,
  conditions: TestConditions,
  runs: readonly RunResult[],
): readonly string[] {
  const limits = limitsFor(test, conditions)
  const assumed = limits.ok ? ASSUMED_TOLERANCE[limits.value.toleranceFrom] : null
  const left = runs.filter((run) => run.excluded !== null).length
  return [
    ...(assumed === null ? [] : [assumed]),
    ...(test.method === 'draw-down' && !test.tubeImmersed
      ? ['The pick-up tube was lifted out for both readings, so nothing is taken off.']
      : []),
    ...(test.method === 'catch' ? ['Back pressure and lift were as they are in service.'] : []),
    ...(test.method === 'weighed' ? ['Air buoyancy (0.1 %) is left out.'] : []),
    ...(left === 0 ? [] : [`${left} ${left === 1 ? 'run was' : 'runs were'} excluded by hand.`]),
  ]
}

const ASSUMED_TOLERANCE = {
  record: null,
  'class-b-assumed':
    'The cylinder has no tolerance on record and is taken as class B of its size (ASTM E1272).',
  'cup-assumed': 'The cup has no tolerance on record and is taken as good to 5 % of what it holds.',
  'one-step-assumed': 'The scale has no tolerance on record and is taken as good to one step.',
} as const
