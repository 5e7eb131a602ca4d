import { all, chain, ok, type Outcome } from '../outcome'
import type { CurrencyCode, Machine, Product, Pump } from '../records'
import type { BudgetSource, Estimate } from '../statistics/estimate'
import { sum } from '../statistics/propagate'
import { dayFromNumber, dayNumberOf } from '../units/days'
import { Decimal } from '../units/decimal'
import type { OpenCalendar } from './calendar'
import { segmentsOf, type Segment } from './history'
import { priceOn } from './price'
import { pumpUse } from './pump-use'
import { spanOf } from './span'
import type { PumpDose, RackRate } from './types'

/** What the stretches of one pump share whatever was set in between. */
export const SHARED_IN_TIME: readonly BudgetSource[] = ['racks', 'dose-seconds', 'rinse-volume', 'density']

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

export interface UseOver {
  readonly litres: Outcome<Estimate<'L'>>
  /** unrounded, each day at its own price */
  readonly cost: Outcome<Decimal>
}

/**
 * Litres and money of one pump between two days: each stretch at the setting it ran at, each day at the price of its
 * day. Days before the first test are the problem `no-runs`.
 */
export function useOver(input: UseOverInput): UseOver {
  const segments = segmentsOf(input.tests, input.from, input.to)
  const litres = chain(all(segments.map((segment) => litresIn(input, segment))), (parts) =>
    sum(parts, 'L', { shared: SHARED_IN_TIME }),
  )
  const costs = all(segments.flatMap((segment) => pricedIn(input, segment)))
  return {
    litres,
    cost: chain(costs, (parts) => ok(parts.reduce((total, part) => total.plus(part), new Decimal(0)))),
  }
}

function litresIn(input: UseOverInput, segment: Segment): Outcome<Estimate<'L'>> {
  const use = pumpUse({
    ...input,
    day: dayFromNumber(segment.from),
    span: spanOf(input.calendar, segment.from, segment.to),
    setting: segment.setting,
  })
  return chain(use.litresPerMonth, (used) => ok({ ...used, unit: 'L' }))
}

/** A stretch cut where the price changes, each part with its money. */
function pricedIn(input: UseOverInput, segment: Segment): readonly Outcome<Decimal>[] {
  const changes = input.product.prices
    .filter((row) => row.currency === input.currency)
    .map((row) => dayNumberOf(row.from))
    .filter((day) => day > segment.from && day < segment.to)
    .sort((a, b) => a - b)
  const edges = [segment.from, ...new Set(changes), segment.to]
  return edges
    .slice(0, -1)
    .map((from, index) =>
      chain(
        all([
          litresIn(input, { ...segment, from, to: edges[index + 1] ?? segment.to }),
          priceOn(input.product, dayFromNumber(from), input.currency),
        ]),
        ([litres, { perLitre }]) => ok(perLitre.times(litres.value)),
      ),
    )
}
