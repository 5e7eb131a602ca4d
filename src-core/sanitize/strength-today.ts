import { fail, ok, type Outcome } from '../outcome'
import type { Day, Product } from '../records'
import type { Estimate } from '../statistics/estimate'
import { daysBetween } from '../units/days'
import { readNumber } from '../units/read'
import { agedHypochlorite, HYPOCHLORITE_WARN_DAYS } from './hypochlorite-age'

export interface StrengthToday {
  /** as recorded, percent in the product's own kind */
  readonly recorded: number
  readonly kind: 'trade-percent' | 'weight-percent'
  readonly since: Day | null
  readonly ageDays: number | null
  readonly warning: 'no-date' | 'older-than-30-days' | 'past-shelf-life' | null
  /** chlorine only: an estimate of what is left, to be confirmed by a titration; never put in place of the record */
  readonly estimatedNow: Outcome<Estimate<'percent'>>
}

/** Room temperature where the store's is not known; 70 °F, the lowest of the table the estimate rests on. */
const STORE_CELSIUS = 21.1

/**
 * How old the recorded strength is and, for a chlorine product, what may be left of it at `celsius` in the store.
 * Counted from the day it was measured, else from delivery. A measured strength stays the figure to enter; the estimate
 * only says how far off the record may be.
 *
 * Problems: `missing` strength; a percent that does not read.
 */
export function strengthToday(
  product: Product,
  today: Day,
  celsius: number = STORE_CELSIUS,
): Outcome<StrengthToday> {
  const { strength } = product
  if (strength.kind === 'none')
    return fail({ code: 'missing', field: 'product.strength', needed: 'strength' })
  const percent = readNumber(strength.percent, 'product.strength.percent', { above: 0, high: 100 })
  if (!percent.ok) return percent
  const since = strength.measuredOn ?? product.deliveredOn
  const age = since === null ? null : Math.max(0, daysBetween(since, today))
  const chlorine = strength.kind === 'trade-percent' || strength.active === 'available-chlorine'
  return ok({
    recorded: percent.value,
    kind: strength.kind,
    since,
    ageDays: age,
    warning: warningFor(product, today, age, chlorine),
    estimatedNow: !chlorine
      ? fail({ code: 'cannot-compute', reason: 'outside-valid-range' })
      : age === null
        ? fail({ code: 'number-missing', field: 'product.deliveredOn' })
        : agedHypochlorite(percent.value, age, celsius),
  })
}

function warningFor(
  product: Product,
  today: Day,
  age: number | null,
  chlorine: boolean,
): StrengthToday['warning'] {
  const life =
    product.shelfLifeDays === null ? null : readNumber(product.shelfLifeDays, 'product.shelfLifeDays')
  const onShelf = product.deliveredOn === null ? null : daysBetween(product.deliveredOn, today)
  if (life !== null && life.ok && onShelf !== null && onShelf > life.value) return 'past-shelf-life'
  if (!chlorine) return null
  if (age === null) return 'no-date'
  return age > HYPOCHLORITE_WARN_DAYS ? 'older-than-30-days' : null
}
