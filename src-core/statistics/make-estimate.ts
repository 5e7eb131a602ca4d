import { fail, ok, type Outcome } from '../outcome'
import { coverageOf } from './coverage'
import { combine, effectiveDegreesOfFreedom } from './degrees-of-freedom'
import type { BudgetLine, BudgetSource, Estimate, ResultUnit } from './estimate'
import { isUsable } from './sum'

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
 * A value with its causes of doubt put together, but no interval yet: a step on the way to a result. Working out the
 * t quantile of every step would cost more than all the rest. An `Estimate` is one as well.
 */
export interface Doubtful {
  readonly value: number
  readonly predicted: boolean
  readonly budget: readonly Doubt[]
}

export type Doubt = Omit<BudgetLine, 'share'>

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
  return settled(doubtful(value, lines, options.predicted ?? false), unit)
}

/** An input taken as exact: no doubt in it, or none worth a line. */
export const exactly = <U extends ResultUnit>(value: number, unit: U): Outcome<Estimate<U>> =>
  estimate(value, unit, [])

/** A step on the way to a result. Problems as `estimate`. */
export function doubtful(value: number, lines: readonly DoubtLine[], predicted: boolean): Outcome<Doubtful> {
  return isUsable(value) && lines.every((line) => isUsable(line.standard))
    ? ok({ value, predicted, budget: mergeBySource(lines) })
    : fail({ code: 'cannot-compute', reason: 'outside-valid-range' })
}

/** The last step: from what is doubtful to the interval. */
export function settled<U extends ResultUnit>(step: Outcome<Doubtful>, unit: U): Outcome<Estimate<U>> {
  if (!step.ok) return step
  const { value, predicted, budget } = step.value
  const standard = combine(budget)
  const { factor: coverage, degreesOfFreedom } = coverageOf(budget, standard)
  const expanded = coverage * standard
  const low = value - expanded
  const high = value + expanded
  const lines = budget.map((line) => shared(line, (line.standard / standard) ** 2))
  const made = { unit, value, standard, coverage, expanded, low, high }
  return ok(
    typeof degreesOfFreedom === 'function'
      ? {
          ...made,
          get degreesOfFreedom() {
            return degreesOfFreedom()
          },
          predicted,
          budget: lines,
        }
      : { ...made, degreesOfFreedom, predicted, budget: lines },
  )
}

function mergeBySource(lines: readonly DoubtLine[]): readonly Doubt[] {
  const kept: Doubt[] = []
  for (const { source, standard, degreesOfFreedom, sign } of lines) {
    const size = Math.abs(standard)
    if (size !== 0) kept.push(doubt(source, size, degrees(degreesOfFreedom ?? null), sign))
  }
  return namesOneTwice(kept) ? putTogether(kept) : kept
}

/** Budgets have a handful of lines: looking at each pair is quicker than any map. */
function namesOneTwice(lines: readonly Doubt[]): boolean {
  for (let i = 1; i < lines.length; i += 1)
    for (let j = 0; j < i; j += 1) if (lines[i]?.source === lines[j]?.source) return true
  return false
}

function putTogether(lines: readonly Doubt[]): readonly Doubt[] {
  const bySource = new Map<BudgetSource, Doubt[]>()
  for (const line of lines) {
    const group = bySource.get(line.source)
    if (group === undefined) bySource.set(line.source, [line])
    else group.push(line)
  }
  return [...bySource.values()].map((group) => {
    const largest = group.reduce((a, b) => (b.standard > a.standard ? b : a))
    return group.length === 1
      ? largest
      : { ...largest, standard: combine(group), degreesOfFreedom: effectiveDegreesOfFreedom(group) }
  })
}

// Written out rather than spread: these two make most of the objects of a worksheet.
const doubt = (
  source: BudgetSource,
  standard: number,
  degreesOfFreedom: number | null,
  sign: -1 | undefined,
): Doubt =>
  sign === undefined ? { source, standard, degreesOfFreedom } : { source, standard, degreesOfFreedom, sign }

const shared = ({ source, standard, degreesOfFreedom, sign }: Doubt, share: number): BudgetLine =>
  sign === undefined
    ? { source, standard, degreesOfFreedom, share }
    : { source, standard, degreesOfFreedom, sign, share }

/** Infinitely many is null, so that it travels as JSON; anything below one, or no number, counts as the least there is. */
function degrees(given: number | null): number | null {
  if (given === null || given === Number.POSITIVE_INFINITY) return null
  return given >= 1 ? given : 1
}
