import { describe, expect, it } from 'vitest'
import type { Step } from '#core/records/index'
import { testsAround } from '#core/worksheet/tests-around'
import type { TestResult } from '#core/worksheet/types'

const at = (minute: number): string => `2026-03-01T10:${String(minute).padStart(2, '0')}:00Z`
const test = (id: string, minute: number): Step => ({
  kind: 'test',
  id,
  at: at(minute),
  method: 'draw-down',
  instrumentId: null,
  tubeImmersed: false,
  primed: true,
  productTemperature: null,
  runs: [],
})
const turn = (minute: number): Step => ({ kind: 'turn', id: `turn-${minute}`, at: at(minute), eighths: 2 })
const result = (testId: string): TestResult => ({ testId }) as TestResult

const steps = [test('found', 1), turn(10), test('first', 12), test('again', 15), turn(20), test('left', 22)]
const results = ['found', 'first', 'again', 'left'].map(result)
const around = (minute: number | null) => {
  const { inForce, before } = testsAround(steps, results, minute === null ? null : at(minute))
  return [inForce?.testId ?? null, before?.testId ?? null]
}

describe('a strength check is held against what the pump gave when the check was made', () => {
  it.each([
    ['before the first turn', 5, ['found', null]],
    ['between a turn and the test after it', 11, ['again', 'found']],
    ['after the last test of a setting', 17, ['again', 'found']],
    ['after the last turn', 30, ['left', 'again']],
    ['before anything was tested', 0, ['found', null]],
  ] as const)('%s', (_, minute, expected) => {
    expect(around(minute)).toEqual(expected)
  })

  it('now is after everything', () => {
    expect(around(null)).toEqual(['left', 'again'])
  })

  it('a setting nobody tested is held against the last test, and tells nothing of a change', () => {
    const untested = [...steps, turn(40)]
    expect(testsAround(untested, results, null)).toEqual({ inForce: result('left'), before: null })
    expect(testsAround([], [], null)).toEqual({ inForce: null, before: null })
  })
})
