import type { Outcome } from '#core/outcome'

/** The value of an outcome that a test needs; the problem becomes the test's failure. */
export function good<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(`expected a value, got ${JSON.stringify(outcome.problem)}`)
  return outcome.value
}

/** The problem code of an outcome, or 'ok'. */
export const codeOf = (outcome: Outcome<unknown>): string => (outcome.ok ? 'ok' : outcome.problem.code)

/** Whether no number anywhere inside is NaN or infinite. */
export function allFinite(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value)
  if (typeof value !== 'object' || value === null) return true
  return Object.values(value).every(allFinite)
}
