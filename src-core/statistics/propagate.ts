import { fail, type Outcome } from '../outcome'
import type { BudgetSource, Estimate, ResultUnit } from './estimate'
import { doubtful, settled, type Doubt, type Doubtful, type DoubtLine } from './make-estimate'
import { isUsable } from './sum'

/** What one input does to a result: its estimate, and by how much the result moves per unit of it. */
export interface Part {
  readonly of: Doubtful
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
export const propagate = <U extends ResultUnit>(
  value: number,
  unit: U,
  parts: readonly Part[],
  sharing: Sharing = {},
): Outcome<Estimate<U>> => settled(combined(value, parts, sharing), unit)

/** The same without an interval yet, for a step on the way to a result. */
function combined(value: number, parts: readonly Part[], { shared = NONE }: Sharing): Outcome<Doubtful> {
  const independent: DoubtLine[] = []
  const together: DoubtLine[] = []
  let predicted = false
  for (const { of, sensitivity } of parts) {
    predicted ||= of.predicted
    for (const line of of.budget) {
      const moved = (line.sign ?? 1) * sensitivity * line.standard
      if (shared.includes(line.source)) addTo(together, line, moved)
      else independent.push(signed(line.source, moved, line.degreesOfFreedom))
    }
  }
  return doubtful(value, together.length === 0 ? independent : [...independent, ...together], predicted)
}

const NONE: readonly BudgetSource[] = []

/** Adds a line of a shared source to what is there of it, with its sign. */
function addTo(together: DoubtLine[], { source, degreesOfFreedom }: Doubt, moved: number): void {
  const at = together.findIndex((line) => line.source === source)
  const before = together[at]
  if (before === undefined) {
    together.push(signed(source, moved, degreesOfFreedom))
    return
  }
  const sum = (before.sign ?? 1) * before.standard + moved
  together[at] = signed(source, sum, fewest(before.degreesOfFreedom ?? null, degreesOfFreedom))
}

/** value a x b x c ...; each part's sensitivity is the product of the others, so a zero is no trouble. */
export const product = <U extends ResultUnit>(
  factors: readonly Doubtful[],
  unit: U,
  options: Sharing & { readonly times?: number } = {},
): Outcome<Estimate<U>> => settled(productStep(factors, options), unit)

/** The same without an interval yet. */
export function productStep(
  factors: readonly Doubtful[],
  options: Sharing & { readonly times?: number } = {},
): Outcome<Doubtful> {
  const times = options.times ?? 1
  const productWithout = (skip: number): number =>
    factors.reduce((p, { value }, i) => (i === skip ? p : p * value), times)
  const parts = factors.map((of, i) => ({ of, sensitivity: productWithout(i) }))
  return combined(productWithout(-1), parts, options)
}

/**
 * times x a / b. Problems: `outside-valid-range`, also for a divisor of zero.
 */
export function quotient<U extends ResultUnit>(
  a: Doubtful,
  b: Doubtful,
  unit: U,
  options: Sharing & { readonly times?: number } = {},
): Outcome<Estimate<U>> {
  const times = options.times ?? 1
  const value = (times * a.value) / b.value
  if (!isUsable(value)) return fail({ code: 'cannot-compute', reason: 'outside-valid-range' })
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

const signed = (source: BudgetSource, moved: number, degreesOfFreedom: number | null): DoubtLine =>
  moved < 0
    ? { source, standard: -moved, degreesOfFreedom, sign: -1 }
    : { source, standard: Math.abs(moved), degreesOfFreedom }

const fewest = (a: number | null, b: number | null): number | null =>
  a === null ? b : b === null ? a : Math.min(a, b)
