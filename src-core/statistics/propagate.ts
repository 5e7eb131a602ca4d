import { fail, type Outcome } from '../outcome'
import type { BudgetSource, Estimate, ResultUnit } from './estimate'
import { estimate, type DoubtLine } from './make-estimate'
import { usable } from './sum'

/** What one input does to a result: its estimate, and by how much the result moves per unit of it. */
export interface Part {
  readonly of: Estimate<ResultUnit>
  readonly sensitivity: number
}

export interface Sharing {
  /**
   * Sources that are one and the same thing in all parts, such as the density of one product or one cylinder used
   * twice. They add with their signs, so they can cancel. Everything else is independent.
   */
  readonly shared?: readonly BudgetSource[]
}

/**
 * Law of propagation of uncertainty: each line of each part, times its sensitivity, becomes a line of the result.
 * Source: JCGM 100:2008 (GUM) 5.1.2 and, for shared sources, 5.2.2 with correlation 1.
 *
 * Problems: `outside-valid-range` when the result or a line is not finite or beyond 1e100.
 */
export function propagate<U extends ResultUnit>(
  value: number,
  unit: U,
  parts: readonly Part[],
  sharing: Sharing = {},
): Outcome<Estimate<U>> {
  const shared = new Set(sharing.shared)
  const independent: DoubtLine[] = []
  const together = new Map<BudgetSource, DoubtLine>()
  for (const { of, sensitivity } of parts)
    for (const line of of.budget) {
      const moved = (line.sign ?? 1) * sensitivity * line.standard
      if (!shared.has(line.source)) independent.push(signed(line.source, moved, line.degreesOfFreedom))
      else {
        const before = together.get(line.source)
        const sum = (before === undefined ? 0 : (before.sign ?? 1) * before.standard) + moved
        const df = fewest(before?.degreesOfFreedom ?? null, line.degreesOfFreedom)
        together.set(line.source, signed(line.source, sum, df))
      }
    }
  return estimate(value, unit, [...independent, ...together.values()], {
    predicted: parts.some((part) => part.of.predicted),
  })
}

/** value a x b x c ...; each part's sensitivity is the product of the others, so a zero is no trouble. */
export function product<U extends ResultUnit>(
  factors: readonly Estimate<ResultUnit>[],
  unit: U,
  options: Sharing & { readonly times?: number } = {},
): Outcome<Estimate<U>> {
  const times = options.times ?? 1
  const values = factors.map((factor) => factor.value)
  const productWithout = (skip: number): number =>
    values.reduce((p, value, i) => (i === skip ? p : p * value), times)
  const parts = factors.map((of, i) => ({ of, sensitivity: productWithout(i) }))
  return propagate(productWithout(-1), unit, parts, options)
}

/**
 * times x a / b. Problems: `outside-valid-range`, also for a divisor of zero.
 */
export function quotient<U extends ResultUnit>(
  a: Estimate<ResultUnit>,
  b: Estimate<ResultUnit>,
  unit: U,
  options: Sharing & { readonly times?: number } = {},
): Outcome<Estimate<U>> {
  const times = options.times ?? 1
  const value = (times * a.value) / b.value
  if (!usable([value])) return fail({ code: 'cannot-compute', reason: 'outside-valid-range' })
  return propagate(
    value,
    unit,
    [
      { of: a, sensitivity: times / b.value },
      { of: b, sensitivity: -value / b.value },
    ],
    options,
  )
}

/** A result times a number known exactly, in a new unit. */
export const scale = <U extends ResultUnit>(
  of: Estimate<ResultUnit>,
  factor: number,
  unit: U,
): Outcome<Estimate<U>> => propagate(of.value * factor, unit, [{ of, sensitivity: factor }])

/** Sum of results in one unit. */
export const sum = <U extends ResultUnit>(
  terms: readonly Estimate<U>[],
  unit: U,
  sharing: Sharing = {},
): Outcome<Estimate<U>> =>
  propagate(
    terms.reduce((total, term) => total + term.value, 0),
    unit,
    terms.map((of) => ({ of, sensitivity: 1 })),
    sharing,
  )

/** a - b, in one unit. Name what both share (the same cylinder, the same rinse water), and it cancels. */
export const difference = <U extends ResultUnit>(
  a: Estimate<U>,
  b: Estimate<NoInfer<U>>,
  sharing: Sharing = {},
): Outcome<Estimate<U>> =>
  propagate(
    a.value - b.value,
    a.unit,
    [
      { of: a, sensitivity: 1 },
      { of: b, sensitivity: -1 },
    ],
    sharing,
  )

const signed = (source: BudgetSource, moved: number, degreesOfFreedom: number | null): DoubtLine => ({
  source,
  standard: Math.abs(moved),
  degreesOfFreedom,
  ...(moved < 0 ? { sign: -1 as const } : {}),
})

const fewest = (a: number | null, b: number | null): number | null =>
  a === null ? b : b === null ? a : Math.min(a, b)
