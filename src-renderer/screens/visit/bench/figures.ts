import { explainDose, explainRequiredFlow } from '#core/explain/dose'
import { explainFlow } from '#core/explain/flow'
import { explainStrength } from '#core/explain/strength'
import type { Working } from '#core/explain/types'
import { doseContext, type DoseContext } from '#core/dose/on-basis'
import { requiredFlow, type RequiredFlow } from '#core/dose/required-flow'
import type { TestConditions } from '#core/drawdown/types'
import { fail, type Outcome } from '#core/outcome'
import type { Instrument, Machine, Product, Pump, Test, WindowBasis } from '#core/records/index'
import type { Estimate } from '#core/statistics/estimate'
import type { DecimalSign } from '#core/units/parse'
import type { TestResult } from '#core/worksheet/types'

/** Everything a number of the bench was worked out from. */
export interface Surroundings {
  readonly pump: Pump
  readonly machine: Machine
  readonly product: Product | null
  readonly instruments: readonly Instrument[]
  readonly test: Test
}

export interface ShownFigure {
  readonly label: string
  readonly figure: Outcome<Estimate>
  readonly working: (sign: DecimalSign) => Outcome<Working>
  readonly large: boolean
}

const BASES: Readonly<Record<string, readonly [label: string, basis: Exclude<WindowBasis, 'mL-per-rack'>]>> =
  {
    'ppm-vv': ['By volume', 'ppm-vv'],
    'mg/L-product': ['By mass', 'mg-per-L-product'],
    'mg/L-active': ['Active', 'mg-per-L-active'],
    'g/L-product': ['In the tank', 'g-per-L-tank'],
  }

export const conditionsOf = (around: Surroundings): TestConditions => ({
  instrument: around.instruments.find((one) => one.id === around.test.instrumentId) ?? null,
  product: around.product,
  tube: around.pump.tube,
  rollers: around.pump.rollers,
})

export const contextOf = (around: Omit<Surroundings, 'test'>): DoseContext =>
  doseContext(around.machine, around.product, around.pump)

/** The numbers of one test, in the order they follow from each other, each with its working. */
export function figuresOf(around: Surroundings, result: TestResult): readonly ShownFigure[] {
  const { flow, dose } = result
  const strengths = result.strengths.flatMap((figure): readonly ShownFigure[] => {
    const named = figure.ok ? BASES[figure.value.unit] : undefined
    if (named === undefined) return []
    const [label, basis] = named
    return [
      {
        label,
        figure,
        large: false,
        working: (sign) =>
          dose.ok ? explainStrength(basis, dose.value, contextOf(around), sign) : fail(dose.problem),
      },
    ]
  })
  // without a flow nothing follows, and why is said where the decision stands
  if (!flow.ok) return []
  return [
    {
      label: 'Flow',
      figure: flow,
      large: true,
      working: (sign) => explainFlow(around.test, conditionsOf(around), sign),
    },
    {
      label: 'Dose',
      figure: dose,
      large: false,
      working: (sign) => explainDose(flow.value, around.pump, sign),
    },
    ...strengths,
  ]
}

/** The flows that the window and its target ask for, mL/min. */
export const flowsWanted = (around: Omit<Surroundings, 'test'>): Outcome<RequiredFlow> =>
  requiredFlow(around.pump, contextOf(around))

/** The working of the flow the target asks for. */
export const flowWanted = (around: Omit<Surroundings, 'test'>, sign: DecimalSign): Outcome<Working> =>
  explainRequiredFlow(around.pump, { rinse: around.machine.rinse, product: around.product }, sign)
