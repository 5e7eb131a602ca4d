import { chain, fail, ok, type Outcome } from '../outcome'
import type { BudgetSource, Estimate } from '../statistics/estimate'
import { estimate, type DoubtLine } from '../statistics/make-estimate'
import type { Charge } from './charges'
import type { Span } from './span'
import type { RackRate, UseParts } from './types'

export interface LitresInput {
  readonly racks: RackRate
  readonly dose: Estimate<'mL/rack'>
  readonly charge: Charge
  /** mL lost at one container change; null: not recorded */
  readonly prime: number | null
  /** L in a container; null: not known */
  readonly container: number | null
}

/**
 * Litres of one pump over a span of days, by where they go.
 * L = (N D + F m) / 1000, times 1 / (1 - p / C) for the p mL primed away at each change of a container of C mL:
 * containers are emptied by use and priming together. N racks, D mL/rack, F fills, m mL a fill.
 * Problem: `cannot-compute` when a container does not outlast its own priming.
 */
export function litresParts(input: LitresInput, span: Span): Outcome<UseParts & { readonly total: number }> {
  const { racks, dose, charge } = input
  const byRacks = (racks.perOpenDay * span.rackDays * dose.value) / 1000
  const byCharges = (charge.fillsPerOpenDay * span.openDays * charge.perFill) / 1000
  const lost = input.container === null || input.prime === null ? 0 : input.prime / 1000 / input.container
  if (!(lost < 1)) return fail({ code: 'cannot-compute', reason: 'outside-valid-range' })
  const total = (byRacks + byCharges) / (1 - lost)
  return ok({ total, racks: byRacks, charges: byCharges, priming: total - byRacks - byCharges })
}

/** Standard uncertainty of the fresh fills a day, which somebody stated and nobody counts, over their number. Our judgement. */
const FILLS_SPREAD = 0.1
/** The same of what a container change loses: how long the prime is held, and how full the line is. Our judgement. */
const PRIMING_SPREAD = 0.25

/** What only the racks' part follows. */
const PER_RACK: readonly BudgetSource[] = ['dose-seconds', 'rinse-volume']

/**
 * The same with its interval: the flow moves racks and charges alike; dose seconds, rinse water and rack count only the
 * racks' part; the number of fills only the charges' part. First-order propagation, JCGM 100:2008 (GUM) 5.1.2.
 */
export function monthLitres(
  input: LitresInput,
  span: Span,
): Outcome<{ readonly estimate: Estimate<'L/month'>; readonly parts: UseParts }> {
  const { racks, dose, charge } = input
  return chain(litresParts(input, span), (parts) => {
    const used = parts.racks + parts.charges
    const primed = used === 0 ? 1 : parts.total / used
    const follows = charge.followsFlow ? used : parts.racks
    const perDose = dose.value === 0 ? 0 : primed / dose.value
    const lines: DoubtLine[] = dose.budget.map((line) => ({
      source: line.source,
      standard: line.standard * perDose * (PER_RACK.includes(line.source) ? parts.racks : follows),
      degreesOfFreedom: line.degreesOfFreedom,
    }))
    lines.push({ source: 'racks', standard: parts.racks * primed * racks.relativeStandard })
    lines.push({ source: 'charges', standard: parts.charges * primed * FILLS_SPREAD })
    lines.push({ source: 'priming', standard: parts.priming * PRIMING_SPREAD })
    return chain(estimate(parts.total, 'L/month', lines, { predicted: dose.predicted }), (litres) =>
      ok({ estimate: litres, parts }),
    )
  })
}
