import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { CurrencyCode, Day, Machine, Product, Pump } from '../records'
import type { BudgetSource, Estimate } from '../statistics/estimate'
import { estimate, type DoubtLine } from '../statistics/make-estimate'
import { difference, scale } from '../statistics/propagate'
import { inUnit } from '../units/quantity'
import { read } from '../units/read'
import { initialCharge } from './charges'
import { priceOn } from './price'
import type { Span } from './span'
import type { PumpSaving, RackRate } from './types'

export interface SavingInput {
  readonly pump: Pump
  readonly machine: Machine
  readonly product: Product | null
  readonly currency: CurrencyCode
  /** the day of the visit: its price counts */
  readonly day: Day
  readonly span: Span
  readonly racks: Outcome<RackRate>
  readonly found: Outcome<Estimate<'mL/rack'>>
  readonly left: Outcome<Estimate<'mL/rack'>>
  /** both tests were read on one instrument, whose tolerance then cancels */
  readonly sameInstrument: boolean
}

/** What the two tests of one visit always share: the run time per rack, and the product in the line. */
const ALWAYS_SHARED: readonly BudgetSource[] = ['dose-seconds', 'density']
const ONE_INSTRUMENT: readonly BudgetSource[] = ['cylinder-tolerance', 'tube-factor', 'scale']

/**
 * What an adjustment saves a month: (D found - D left) x (N + F t0 / t) / 1000 litres, times the price of the day.
 * N racks, F fills of t0 s, t s per rack: a timed initial charge follows the flow as the dose does. Positive: less is
 * used than before; negative: more, because it was under-dosing. Intervals at 95 %. A pump that a probe controls saves
 * nothing by its flow: the problem is `cannot-compute`.
 */
export function pumpSaving(input: SavingInput): PumpSaving {
  const litres = chain(all([input.racks, input.found, input.left, fillRacks(input)]), (parts) =>
    savedLitres(parts, input.span, input.sameInstrument),
  )
  const price =
    input.product === null
      ? fail({ code: 'missing', field: 'pump.productId', needed: 'product' })
      : priceOn(input.product, input.day, input.currency)
  return {
    pumpId: input.pump.id,
    litresPerMonth: litres,
    moneyPerMonth: chain(all([litres, price]), ([saved, { perLitre }]) =>
      scale(saved, perLitre.toNumber(), 'money/month'),
    ),
  }
}

function savedLitres(
  [racks, found, left, fills]: readonly [RackRate, Estimate<'mL/rack'>, Estimate<'mL/rack'>, number],
  span: Span,
  sameInstrument: boolean,
): Outcome<Estimate<'L/month'>> {
  const n = racks.perOpenDay * span.rackDays
  const shared = sameInstrument ? [...ALWAYS_SHARED, ...ONE_INSTRUMENT] : ALWAYS_SHARED
  return chain(difference(found, left, { shared }), (change) => {
    const times = (n + fills * span.openDays) / 1000
    const lines: DoubtLine[] = change.budget.map((line) => ({
      source: line.source,
      standard: line.standard * times,
      degreesOfFreedom: line.degreesOfFreedom,
    }))
    const byCount = (change.value * n * racks.relativeStandard) / 1000
    return estimate(
      change.value * times,
      'L/month',
      [...lines, { source: 'racks', standard: byCount, ...(byCount < 0 ? { sign: -1 as const } : {}) }],
      { predicted: change.predicted },
    )
  })
}

/** A day's timed initial charges as so many racks' doses: fills x charge seconds / dose seconds. */
function fillRacks({ pump, machine, product }: SavingInput): Outcome<number> {
  if (pump.control === 'probe') return fail({ code: 'cannot-compute', reason: 'outside-valid-range' })
  if (pump.initialChargeSeconds === null || pump.doseSeconds === null) return ok(0)
  const seconds = read(pump.doseSeconds, 'pump.doseSeconds', { above: 0 })
  return chain(all([initialCharge(pump, machine, product, 60), seconds]), ([charge, perRack]) =>
    ok(charge.followsFlow ? (charge.fillsPerOpenDay * charge.perFill) / inUnit(perRack, 's') : 0),
  )
}
