import * as fc from 'fast-check'
import type { Outcome } from '#core/outcome'
import { dumpModel, tankModel } from '#core/tank/model'
import type { Closure, DumpModel, Feeding, TankModel } from '#core/tank/types'

export const good = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem))
  return outcome.value
}

export const tank = (
  volume: number,
  rinse: number,
  options: { closure?: Closure; feeding?: Feeding; carriedOut?: number } = {},
): TankModel =>
  good(
    tankModel({
      volume,
      rinse,
      carriedOut: options.carriedOut ?? 0,
      closure: options.closure ?? 'continuous',
      feeding: options.feeding ?? 'with-rinse',
    }),
  )

export const dump = (heel: number, fill: number): DumpModel => good(dumpModel(heel, fill))

export const anyTank = fc
  .record({
    volume: fc.double({ min: 1, max: 500, noNaN: true }),
    rinse: fc.double({ min: 0.2, max: 50, noNaN: true }),
    closure: fc.constantFrom<Closure>('continuous', 'mix-then-overflow', 'displacement'),
    feeding: fc.constantFrom<Feeding>('with-rinse', 'slug'),
  })
  .map(({ volume, rinse, ...options }) => tank(volume, rinse, options))

export const anyModel = fc.oneof(
  anyTank,
  fc
    .tuple(fc.double({ min: 0, max: 20, noNaN: true }), fc.double({ min: 0.2, max: 30, noNaN: true }))
    .map(([heel, fill]) => dump(heel, fill)),
)

/** Whatever a number could be, NaN and infinities included. */
export const wild = fc.oneof(fc.double(), fc.constantFrom(NaN, Infinity, -Infinity, 0, -0, 1e308, 5e-324))

/** Fails when a result holds a number that cannot be shown. */
export function everyNumberFinite(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value)
  if (Array.isArray(value)) return value.every(everyNumberFinite)
  if (typeof value === 'object' && value !== null) return Object.values(value).every(everyNumberFinite)
  return true
}
