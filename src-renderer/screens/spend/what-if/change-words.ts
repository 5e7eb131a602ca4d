import type { ScenarioResult } from '#core/spend/scenario'
import type { Estimate } from '#core/statistics/estimate'
import type { Decimal } from '#core/units/decimal'
import { formatPlaces, placesFor } from '#core/units/format'
import { minorDigits } from '#core/units/money'
import type { SpendDesk } from '../spend-desk.svelte'

/** `+4.20` or `−4.20`; the sign is part of the figure. */
export const signed = (text: string): string => (text.startsWith('−') ? text : `+${text}`)

/** A change of money: `4.20 EUR less`, `4.20 EUR more`, `nothing`. */
export function changeWords(change: Decimal, desk: SpendDesk): string {
  if (change.isZero()) return 'no more and no less'
  return `${desk.money(change.abs())} ${change.isNegative() ? 'less' : 'more'}`
}

/** `± 1.20` of a money estimate times a factor; as many digits as it is worth, never finer than the coin. */
export function spreadWords(
  change: Estimate<'money/month'>,
  times: number,
  desk: Pick<SpendDesk, 'currency' | 'sign'>,
): string {
  const spread = change.expanded * times
  const places = placesFor(spread) === 0 ? 0 : minorDigits(desk.currency)
  return `± ${formatPlaces(spread, places, desk.sign)}`
}

/** Whether a scenario saves, costs, or does neither, for a mark beside it. */
export const directionOf = (result: ScenarioResult): 'less' | 'more' | 'same' | 'unknown' =>
  !result.changePerMonth.ok
    ? 'unknown'
    : result.changePerMonth.value.isZero()
      ? 'same'
      : result.changePerMonth.value.isNegative()
        ? 'less'
        : 'more'
