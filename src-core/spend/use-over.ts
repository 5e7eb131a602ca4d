import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { CurrencyCode, Machine, Product, Pump } from '../records'
import type { BudgetSource, Estimate } from '../statistics/estimate'
import { sum } from '../statistics/propagate'
import { dayFromNumber, dayNumberOf } from '../units/days'
import { Decimal } from '../units/decimal'
import type { OpenCalendar } from './calendar'
import { segmentsOf, type Segment } from './history'
import { litresParts, monthLitres, type LitresInput } from './month-litres'
import { priceOn } from './price'
import { pumpLitres } from './pump-litres'
import { spanOf } from './span'
import type { PumpDose, RackRate } from './types'

/** What the stretches of one pump share whatever was set in between. */
export const SHARED_IN_TIME: readonly BudgetSource[] = [
  'racks',
  'charges',
  'priming',
  'dose-seconds',
  'rinse-volume',
  'density',
]

export interface UseOverInput {
  readonly pump: Pump
  readonly machine: Machine
  readonly product: Product
  readonly currency: CurrencyCode
  readonly calendar: OpenCalendar
  readonly racks: Outcome<RackRate>
  /** tests of this pump, in order */
  readonly tests: readonly PumpDose[]
  /** day numbers; `to` is not included */
  readonly from: number
  readonly to: number
}

/** Litres of one pump between two days, each stretch at the setting it ran at. Days before the first test are `no-runs`. */
export function litresOver(input: UseOverInput): Outcome<Estimate<'L'>> {
  const parts = all(partsOf(input).map((part) => litresIn(input, part)))
  return chain(parts, (used) => sum(used, 'L', { shared: SHARED_IN_TIME }))
}

/** Money of one pump between two days, unrounded, each day at its own setting and price. */
export function costOver(input: UseOverInput): Outcome<Decimal> {
  const parts = all(partsOf(input).flatMap((part) => pricedIn(input, part)))
  return chain(parts, (money) => ok(money.reduce((total, one) => total.plus(one), new Decimal(0))))
}

const partsOf = (input: UseOverInput): readonly Part[] =>
  segmentsOf(input.tests, input.from, input.to).map((segment) => ({
    segment,
    inputs: pumpLitres({ ...input, day: dayFromNumber(segment.from), setting: segment.setting }).inputs,
  }))

interface Part {
  readonly segment: Segment
  readonly inputs: Outcome<LitresInput>
}

const litresIn = (input: UseOverInput, { segment, inputs }: Part): Outcome<Estimate<'L'>> =>
  chain(inputs, (known) =>
    chain(monthLitres(known, spanOf(input.calendar, segment.from, segment.to)), (month) =>
      ok({ ...month.estimate, unit: 'L' }),
    ),
  )

/** A stretch cut where the price changes, each part with its money. */
function pricedIn(input: UseOverInput, { segment, inputs }: Part): readonly Outcome<Decimal>[] {
  const changes = input.product.prices
    .filter((row) => row.currency === input.currency)
    .map((row) => dayNumberOf(row.from))
    .filter((day) => day > segment.from && day < segment.to)
    .sort((a, b) => a - b)
  const edges = [segment.from, ...new Set(changes), segment.to]
  return edges
    .slice(0, -1)
    .map((from, index) =>
      chain(all([inputs, priceOn(input.product, dayFromNumber(from), input.currency)]), ([known, price]) =>
        chain(
          litresParts(known, spanOf(input.calendar, from, edges[index + 1] ?? segment.to)),
          ({ total }) =>
            Number.isFinite(total)
              ? ok(price.perLitre.times(total))
              : fail({ code: 'cannot-compute', reason: 'outside-valid-range' }),
        ),
      ),
    )
}
