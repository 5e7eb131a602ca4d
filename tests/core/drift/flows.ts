import type { FlowTest } from '#core/drift/types'
import type { Estimate } from '#core/statistics/estimate'
import { addDays } from '#core/units/days'

export const START = '2026-01-05'

/** A flow with a normal 95 % interval, mL/min. */
export const flowOf = (value: number, standard: number): Estimate<'mL/min'> => ({
  unit: 'mL/min',
  value,
  standard,
  coverage: 1.96,
  expanded: 1.96 * standard,
  low: value - 1.96 * standard,
  high: value + 1.96 * standard,
  degreesOfFreedom: null,
  predicted: false,
  budget: [],
})

/** A test some days after the start; every test its own visit unless named. */
export const testOn = (day: number, value: number, standard = 0.3, visitId = `visit ${day}`): FlowTest => ({
  kind: 'test',
  visitId,
  testId: `${visitId}: ${value}`,
  day: addDays(START, day),
  flow: flowOf(value, standard),
})

/** Seeded normal deviates (mulberry32, public domain; Box and Muller). */
export function normals(seed: number): () => number {
  let state = seed >>> 0
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296
  }
  return () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next())
}
