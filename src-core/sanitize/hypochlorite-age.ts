import { all, fail, within, type Outcome } from '../outcome'
import type { Estimate } from '../statistics/estimate'
import { estimate } from '../statistics/make-estimate'
import { rectangular } from '../statistics/rectangular'

/**
 * Loss per month of trade 12.5 % hypochlorite at 70, 80 and 90 °F, as one community table prints what is left. Its
 * author says it includes guesses; it is the only figure the sources give.
 */
const TABLE = [
  { celsius: 21.1111, left: 11.11 },
  { celsius: 26.6667, left: 9.93 },
  { celsius: 32.2222, left: 8.36 },
] as const
const TABLE_START = 12.5
const MONTH_DAYS = 365.25 / 12

/**
 * Second-order rate at 21.1 °C per percent and month, and its growth per °C, fitted to the table (least squares on the
 * logarithm): the rate rises 3.4 times per 10 °C, inside the "2 to 4 times" of a storage guide, and the square law
 * is that guide's "about a quarter on halving the strength".
 */
const rates = TABLE.map(({ celsius, left }) => ({
  x: celsius - TABLE[0].celsius,
  y: Math.log(1 / left - 1 / TABLE_START),
}))
const meanX = rates.reduce((sum, row) => sum + row.x, 0) / rates.length
const meanY = rates.reduce((sum, row) => sum + row.y, 0) / rates.length
const growth =
  rates.reduce((sum, row) => sum + (row.x - meanX) * (row.y - meanY), 0) /
  rates.reduce((sum, row) => sum + (row.x - meanX) ** 2, 0)

/** The loss may be half of what is estimated, or half as much again. Judgement, from how the sources differ. */
const LOSS_SHARE = 0.5

/**
 * What is left of a hypochlorite of `percent` trade or weight percent after `days` at `celsius`: an estimate, with the
 * doubt that the sources leave. 1/C = 1/C0 + k t.
 *
 * Valid 0.5 to 16 %, 0 to 365 days, 5 to 40 °C. Problems: a number out of that range.
 * Sources: a community table of bleach strength by storage temperature; a storage guide for end users (both secondary).
 */
export function agedHypochlorite(
  percent: number,
  days: number,
  celsius: number,
): Outcome<Estimate<'percent'>> {
  const read = all([
    within(percent, 0.5, 16, 'product.strength.percent', 'percent'),
    within(days, 0, 365, 'product.age', 'd'),
    within(celsius, 5, 40, 'product.temperature', 'degC'),
  ])
  if (!read.ok) return read
  const rate = Math.exp(meanY + growth * (celsius - TABLE[0].celsius - meanX))
  const left = percent / (1 + (percent * rate * days) / MONTH_DAYS)
  if (!Number.isFinite(left)) return fail({ code: 'cannot-compute', reason: 'outside-valid-range' })
  return estimate(
    left,
    'percent',
    [{ source: 'strength', standard: rectangular(LOSS_SHARE * (percent - left)) }],
    {
      predicted: true,
    },
  )
}

/** After this many days a hypochlorite's recorded strength is not to be relied on. Judgement. */
export const HYPOCHLORITE_WARN_DAYS = 30
