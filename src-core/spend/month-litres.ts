import { chain, fail, ok, type Outcome } from '../outcome'
import type { Estimate } from '../statistics/estimate'
import { estimate, type DoubtLine } from '../statistics/make-estimate'
import type { Charge } from './charges'
import type { Span } from './span'
import type { RackRate, UseParts } from './types'

export interface MonthLitresInput {
  readonly racks: RackRate
  readonly dose: Estimate<'mL/rack'>
  readonly charge: Charge
  /** mL lost at one container change; null: not recorded */
  readonly prime: number | null
  /** L in a container */
  readonly container: Outcome<number> | null
  readonly span: Span
}

/**
 * Litres of one pump over a span of days, and where they go.
 * L = (N D + F m) / 1000, times 1 / (1 - p / C) for the p mL primed away at each change of a container of C mL:
 * containers are emptied by use and priming together. N racks, D mL/rack, F fills, m mL a fill.
 * Uncertainty: the flow moves racks and charges alike, dose seconds and rack count only the racks' part.
 * Problem: `cannot-compute` when a container does not outlast its own priming.
 */
export function monthLitres(
  input: MonthLitresInput,
): Outcome<{ readonly estimate: Estimate<'L/month'>; readonly parts: UseParts }> {
  const { racks, dose, charge, span } = input
  const n = racks.perOpenDay * span.rackDays
  const byRacks = (n * dose.value) / 1000
  const byCharges = (charge.fillsPerOpenDay * span.openDays * charge.perFill) / 1000
  const size = input.container !== null && input.container.ok ? input.container.value : null
  const lost = size === null || input.prime === null ? 0 : input.prime / 1000 / size
  if (!(lost < 1)) return fail({ code: 'cannot-compute', reason: 'outside-valid-range' })
  const primed = 1 / (1 - lost)
  const value = (byRacks + byCharges) * primed
  const follows = charge.followsFlow ? byRacks + byCharges : byRacks
  const perDose = dose.value === 0 ? 0 : primed / dose.value
  const lines: DoubtLine[] = dose.budget.map((line) => ({
    source: line.source,
    standard: line.standard * perDose * (line.source === 'dose-seconds' ? byRacks : follows),
    degreesOfFreedom: line.degreesOfFreedom,
  }))
  lines.push({
    source: 'racks',
    standard: byRacks * primed * racks.relativeStandard,
  })
  const parts = { racks: byRacks, charges: byCharges, priming: value - byRacks - byCharges }
  return chain(estimate(value, 'L/month', lines, { predicted: dose.predicted }), (litres) =>
    ok({ estimate: litres, parts }),
  )
}
