import type { BudgetSource, Estimate, ResultUnit } from '../statistics/estimate'
import { estimate } from '../statistics/make-estimate'
import { formatEstimate } from '../units/format'
import type { DecimalSign } from '../units/parse'
import type { Alternative } from './alternatives'
import { SOURCE_NAMES } from './source-names'
import type { Working } from './types'
import { line, put } from './working'

export interface BudgetSummary {
  /** causes from the largest down */
  readonly lines: readonly { readonly source: BudgetSource; readonly name: string; readonly share: number }[]
  /** the alternative that narrows the interval most, and the expanded uncertainty it would leave */
  readonly best: { readonly label: string; readonly expanded: number } | null
  /** "The cylinder is 85 % of it: a 50 mL class A cylinder would bring it from ±0.62 to ±0.42 mL/min." */
  readonly text: string
}

/** Less of a gain than this is not worth a sentence. Judgement. */
const WORTH_SAYING = 0.95

/**
 * What a result's doubt is made of, and what would make it smaller, in plain words. Every alternative's interval is
 * worked out anew, with its own coverage factor.
 */
export function budgetSummary(
  of: Estimate<ResultUnit>,
  alternatives: readonly Alternative[],
  sign: DecimalSign = 'point',
): BudgetSummary {
  const lines = of.budget
    .map(({ source, share }) => ({ source, name: SOURCE_NAMES[source], share }))
    .toSorted((a, b) => b.share - a.share)
  const largest = lines[0]
  if (largest === undefined) return { lines, best: null, text: 'Nothing here is in doubt.' }
  const tried = alternatives
    .flatMap((one) => {
      const narrowed = withLine(of, one)
      return narrowed === null ? [] : [{ label: one.label, narrowed }]
    })
    .toSorted((a, b) => a.narrowed.expanded - b.narrowed.expanded)[0]
  const best = tried !== undefined && tried.narrowed.expanded < WORTH_SAYING * of.expanded ? tried : undefined
  const share = `${Math.round(largest.share * 100)} %`
  const made = `${capital(largest.name)} ${largest.share > 0.995 ? 'is all of it' : `is ${share} of it`}`
  return {
    lines,
    best: best === undefined ? null : { label: best.label, expanded: best.narrowed.expanded },
    text: best === undefined ? `${made}.` : `${made}: ${best.label} ${gain(of, best.narrowed, sign)}.`,
  }
}

function gain(before: Estimate<ResultUnit>, after: Estimate<ResultUnit>, sign: DecimalSign): string {
  const ratio = after.expanded / before.expanded
  if (ratio > 0.45 && ratio < 0.55) return 'would halve this'
  const was = formatEstimate(before as Estimate, sign)
  const would = formatEstimate(after as Estimate, sign)
  return `would bring it from ±${was.expanded} to ±${would.expanded} ${was.unit}`
}

/** The estimate with one line scaled; null when it has no such line. */
function withLine(of: Estimate<ResultUnit>, change: Alternative): Estimate<ResultUnit> | null {
  if (!of.budget.some((l) => l.source === change.source)) return null
  const changed = of.budget.map((l) =>
    l.source === change.source
      ? {
          ...l,
          standard: l.standard * change.factor,
          degreesOfFreedom: change.degreesOfFreedom ?? l.degreesOfFreedom,
        }
      : l,
  )
  const made = estimate(of.value, of.unit, changed, { predicted: of.predicted })
  return made.ok ? made.value : null
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** The working of an uncertainty: lines in quadrature, degrees of freedom, coverage factor. */
export function explainUncertainty(of: Estimate<ResultUnit>, sign: DecimalSign = 'point'): Working {
  const unit = formatEstimate(of as Estimate, sign).unit
  const squares = of.budget.map((l) => `${put(l.standard, sign)}²`).join(' + ')
  return {
    title: 'Uncertainty, 95 %',
    formula: 'U = k × √(u1² + u2² + …)',
    inputs: [
      ...of.budget.map((l, i) => line(`u${i + 1}`, capital(SOURCE_NAMES[l.source]), l.standard, unit)),
      ...(of.degreesOfFreedom === null
        ? []
        : [line('ν', 'Effective degrees of freedom', of.degreesOfFreedom)]),
      line('k', 'Coverage factor', of.coverage),
    ],
    substituted: squares === '' ? 'U = 0' : `U = ${put(of.coverage, sign)} × √(${squares})`,
    result: line('U', 'Expanded uncertainty', of.expanded, unit),
    source:
      'JCGM 100:2008 (GUM): standard uncertainties in quadrature, Welch-Satterthwaite degrees of freedom, k from t.',
    assumptions: [
      ...(of.predicted
        ? ['Predicted from the instruments and the run time: no scatter was seen yet.']
        : ['What makes runs differ is counted once, in their scatter; only what all runs share is added.']),
      ...(of.degreesOfFreedom !== null && of.degreesOfFreedom < 3
        ? ['Two runs say little about scatter, so the factor is large. A third run narrows this most.']
        : []),
    ],
  }
}
