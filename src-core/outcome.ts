import type { Problem } from './problem'

/** What a calculation or a use case hands back: a value, or the problem that stood in its way. Never an exception. */
export type Outcome<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem }

export const ok = <T>(value: T): Outcome<T> => ({ ok: true, value })

export const fail = (problem: Problem): Outcome<never> => ({ ok: false, problem })

/** Applies a step to a good value; a problem passes through untouched. */
export const chain = <T, R>(outcome: Outcome<T>, step: (value: T) => Outcome<R>): Outcome<R> =>
  outcome.ok ? step(outcome.value) : outcome

/** All values, or the first problem in the order given. */
export function all<T extends readonly Outcome<unknown>[]>(
  outcomes: readonly [...T],
): Outcome<{ [K in keyof T]: T[K] extends Outcome<infer V> ? V : never }> {
  const values: unknown[] = []
  for (const outcome of outcomes) {
    if (!outcome.ok) return outcome
    values.push(outcome.value)
  }
  return ok(values as { [K in keyof T]: T[K] extends Outcome<infer V> ? V : never })
}

/** A double that can be shown: NaN and infinities become the problem given instead. */
export const finite = (value: number, problem: Problem): Outcome<number> =>
  Number.isFinite(value) ? ok(value) : fail(problem)

/** A double inside `low`..`high`, both allowed; anything else, NaN too, is the problem that names the field. */
export const within = (
  value: number,
  low: number,
  high: number,
  field: string,
  unit: string,
): Outcome<number> =>
  value >= low && value <= high ? ok(value) : fail({ code: 'number-out-of-range', field, low, high, unit })
