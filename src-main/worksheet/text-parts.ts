import { sentence } from '#core/messages/sentence'
import type { Outcome } from '#core/outcome'
import type { Estimate, ResultUnit } from '#core/statistics/estimate'
import type { Decimal } from '#core/units/decimal'
import { formatEstimate, formatMoney } from '#core/units/format'
import type { Worksheet } from '#core/worksheet/types'

/** The decimal sign of the text, whatever the settings of the program. */
export const SIGN = 'point'

export const shown = (one: Outcome<Estimate<ResultUnit>>): string =>
  said(one, (estimate) => formatEstimate(estimate, SIGN).whole)

export const money = (amount: Decimal, worksheet: Worksheet): string =>
  formatMoney(amount, worksheet.currency, SIGN)

export const said = <T>(outcome: Outcome<T>, show: (value: T) => string): string =>
  outcome.ok ? show(outcome.value) : `[${sentence(outcome.problem)}]`
