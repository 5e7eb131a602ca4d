import type { Working } from '#core/explain/types'
import type { Outcome } from '#core/outcome'
import type { Estimate } from '#core/statistics/estimate'
import type { TestResult } from '#core/worksheet/types'
import type { PumpBench } from '../desk/pump-bench.svelte'

export interface ShownFigure {
  readonly label: string
  readonly figure: Outcome<Estimate>
  readonly working: (() => Outcome<Working>) | null
  readonly large: boolean
}

const STRENGTH_LABELS: Readonly<Record<string, string>> = {
  'ppm-vv': 'By volume',
  'mg/L-product': 'By mass',
  'mg/L-active': 'Active',
  'g/L-product': 'In the tank',
}

/** The numbers of one test, in the order they follow from each other. */
export function figuresOf(_: PumpBench, test: TestResult): readonly ShownFigure[] {
  const strengths = test.strengths.flatMap((figure): readonly ShownFigure[] =>
    figure.ok && figure.value.unit !== 'mL/rack'
      ? [{ label: STRENGTH_LABELS[figure.value.unit] ?? 'Strength', figure, working: null, large: false }]
      : [],
  )
  return [
    { label: 'Flow', figure: test.flow, working: null, large: true },
    ...(test.flow.ok ? [{ label: 'Dose', figure: test.dose, working: null, large: false }] : []),
    ...strengths,
  ]
}
