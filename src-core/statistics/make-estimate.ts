import { fail, ok, type Outcome } from '../outcome'
import { coverageOf } from './coverage'
import { combine, effectiveDegreesOfFreedom } from './degrees-of-freedom'
import type { BudgetLine, BudgetSource, Estimate, ResultUnit } from './estimate'
import { usable } from './sum'

/** One known cause of doubt about a result, as it goes into a budget. */
export interface DoubtLine {
  readonly source: BudgetSource
  /** standard uncertainty in the unit of the result */
  readonly standard: number
  /** null or absent: infinitely many, as for anything not judged from repeats */
  readonly degreesOfFreedom?: number | null
  readonly sign?: -1
}

/**
 * A result with its uncertainty budget: lines in quadrature, degrees of freedom by Welch-Satterthwaite, 95 % interval
 * with t. Lines of one source are put together as independent; lines of no size are left out.
 * `value` and every line in `unit`. Source: JCGM 100:2008 (GUM) 5.1.2, G.3, G.4.
 *
 * Problems: `outside-valid-range` when the value or a line is not finite or beyond 1e100.
 */
export function estimate<U extends ResultUnit>(
  value: number,
  unit: U,
  lines: readonly DoubtLine[],
  options: { readonly predicted?: boolean } = {},
): Outcome<Estimate<U>> {
  if (!usable([value, ...lines.map((line) => line.standard)]))
    return fail({ code: 'cannot-compute', reason: 'outside-valid-range' })
  const merged = mergeBySource(lines)
  const standard = combine(merged)
  const { factor: coverage, degreesOfFreedom } = coverageOf(merged)
  const expanded = coverage * standard
  return ok({
    unit,
    value,
    standard,
    coverage,
    expanded,
    low: value - expanded,
    high: value + expanded,
    degreesOfFreedom,
    predicted: options.predicted ?? false,
    budget: merged.map((line) => ({ ...line, share: (line.standard / standard) ** 2 })),
  })
}

/** An input taken as exact: no doubt in it, or none worth a line. */
export const exactly = <U extends ResultUnit>(value: number, unit: U): Outcome<Estimate<U>> =>
  estimate(value, unit, [])

type MergedLine = Omit<BudgetLine, 'share'>

function mergeBySource(lines: readonly DoubtLine[]): readonly MergedLine[] {
  const bySource = new Map<BudgetSource, MergedLine[]>()
  for (const line of lines) {
    const standard = Math.abs(line.standard)
    if (standard === 0) continue
    const kept: MergedLine = {
      source: line.source,
      standard,
      degreesOfFreedom: degrees(line.degreesOfFreedom ?? null),
      ...(line.sign === undefined ? {} : { sign: line.sign }),
    }
    bySource.set(line.source, [...(bySource.get(line.source) ?? []), kept])
  }
  return [...bySource.values()].map((group) => {
    const largest = group.reduce((a, b) => (b.standard > a.standard ? b : a))
    return group.length === 1
      ? largest
      : { ...largest, standard: combine(group), degreesOfFreedom: effectiveDegreesOfFreedom(group) }
  })
}

/** Infinitely many is null, so that it travels as JSON; anything below one, or no number, counts as the least there is. */
function degrees(given: number | null): number | null {
  if (given === null || given === Number.POSITIVE_INFINITY) return null
  return given >= 1 ? given : 1
}
