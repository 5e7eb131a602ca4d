import { CYLINDER_TOLERANCES } from '../drawdown/cylinder-tolerances'
import { holds, standardSizeFor, type Candidate } from '../drawdown/choose-cylinder'
import type { SeriesState } from '../drawdown/types'
import { RINSE_SPREAD } from '../dose/rinse-volume'
import { STRENGTH_MEASURED, STRENGTH_STATED } from '../dose/product-strength'
import type { DoseContext } from '../dose/on-basis'
import type { Instrument, TestMethod } from '../records'
import type { BudgetSource } from '../statistics/estimate'
import { rectangular } from '../statistics/rectangular'

/** Something that would make one line of a budget smaller. */
export interface Alternative {
  readonly source: BudgetSource
  /** as it starts a sentence's second half: "a 25 mL class A cylinder" */
  readonly label: string
  /** new standard uncertainty of the line over the old one */
  readonly factor: number
  /** of the line then, when they change too */
  readonly degreesOfFreedom?: number
}

/**
 * What else the runs of a series could have been measured with: the instruments at hand, and class A cylinders of
 * ASTM E1272 that hold a run. Only what is better than what was used.
 */
export function instrumentAlternatives(
  state: SeriesState,
  tools: readonly Candidate[],
  instruments: readonly Instrument[],
  method: TestMethod,
): readonly Alternative[] {
  const { doubt } = state
  const { source, standard } = doubt.instrument
  const volume = (state.flow * state.seconds) / 60
  const own = tools.flatMap((tool): readonly Alternative[] => {
    const name = instruments.find((one) => one.id === tool.instrumentId)?.name ?? ''
    const factor = tool.doubt.instrument.standard / standard
    return tool.instrumentId !== state.instrumentId && holds(tool, volume)
      ? [{ source, label: `your ${name === '' ? 'other instrument' : name}`, factor }]
      : []
  })
  const size = standardSizeFor(volume, method)
  const glass =
    source === 'cylinder-tolerance'
      ? CYLINDER_TOLERANCES.filter((row) => row.capacity === size).map((row) => ({
          source,
          label: `a ${row.capacity} mL class A cylinder`,
          factor: rectangular(row.A) / standard,
        }))
      : []
  return [...own, ...glass].filter((one) => one.factor < 1)
}

/** More runs of the same length, up to the usual three more. */
export const runAlternatives = (state: SeriesState): readonly Alternative[] =>
  [1, 2, 3].map((more) => ({
    source: 'replicates' as const,
    label: `${more} more ${more === 1 ? 'run' : 'runs'}`,
    factor: Math.sqrt(state.runs / (state.runs + more)),
    degreesOfFreedom: state.runs + more - 1,
  }))

/** Measuring what was only assumed: the rinse water, the strength. */
export function inputAlternatives(context: DoseContext): readonly Alternative[] {
  const { rinse, product } = context
  const water =
    rinse !== null && rinse.spread === null && rinse.kind !== 'measured'
      ? [
          {
            source: 'rinse-volume' as const,
            label: 'catching the rinse water of a rack',
            factor: RINSE_SPREAD.measured / RINSE_SPREAD[rinse.kind],
          },
        ]
      : []
  const strength =
    product !== null && product.strength.kind !== 'none' && product.strength.measuredOn === null
      ? [
          {
            source: 'strength' as const,
            label: 'measuring the strength of the product',
            factor: STRENGTH_MEASURED / STRENGTH_STATED,
          },
        ]
      : []
  return [...water, ...strength]
}
