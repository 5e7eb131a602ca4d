import { all, chain, fail, ok } from '../outcome'
import type { CurrencyCode } from '../records'
import { scale } from '../statistics/propagate'
import { Decimal } from '../units/decimal'
import { minorDigits, roundMoney } from '../units/money'
import { monthLitres } from './month-litres'
import { priceOn } from './price'
import { pumpLitres, type PumpLitresInput } from './pump-litres'
import type { Span } from './span'
import type { PumpUse, UseAssumption } from './types'

export interface PumpUseInput extends PumpLitresInput {
  /** the month, or any other stretch of days */
  readonly span: Span
}

/**
 * What one pump uses and costs in a month (or any span of days): racks x dose, initial charges, priming at each
 * container change. Litres with a 95 % interval; containers; money rounded half-up to the minor unit as one printed
 * line; money per rack to a thousandth of the minor unit. Each result carries its own problem: litres stand without a
 * price, racks without a test.
 * Sources: litres = (racks x mL/rack + fills x mL/fill) / 1000, relative variances add (first-order propagation,
 * JCGM 100:2008, 5.1.2).
 */
export function pumpUse(input: PumpUseInput): PumpUse {
  const { pump, machine, product, span } = input
  const racksPerMonth = chain(input.racks, (rate) => ok(rate.perOpenDay * span.rackDays))
  const { doseFrom, dose, charge, priming, container, inputs } = pumpLitres(input)
  const month = chain(inputs, (known) => monthLitres(known, span))
  const litres = chain(month, ({ estimate }) => ok(estimate))
  const price =
    product === null
      ? fail({ code: 'missing', field: 'pump.productId', needed: 'product' })
      : priceOn(product, input.day, input.currency)
  const exactCost = chain(all([litres, price]), ([used, { perLitre }]) => ok(perLitre.times(used.value)))
  const assumptions: UseAssumption[] = []
  if (input.racks.ok && input.racks.value.from === 'stated' && machine.racksSpread === null)
    assumptions.push('racks-spread')
  if (charge.ok && !charge.value.known) assumptions.push('no-initial-charge')
  if (priming.ok && priming.value === null) assumptions.push('no-priming-loss')
  if (doseFrom === 'target') assumptions.push('probe-holds-target')
  return {
    pumpId: pump.id,
    productId: pump.productId,
    racksPerMonth,
    doseFrom,
    dose,
    litresPerMonth: litres,
    parts: month.ok ? month.value.parts : null,
    containersPerMonth: chain(litres, (used) =>
      container === null
        ? fail({ code: 'missing', field: 'product.containerSize', needed: 'container-size' })
        : chain(container, (size) => ok(used.value / size)),
    ),
    costPerMonth: chain(exactCost, (cost) => ok(roundMoney(cost, input.currency))),
    costPerRack: chain(all([exactCost, racksPerMonth]), ([cost, racks]) =>
      racks > 0
        ? ok(roundPerRack(cost.div(racks), input.currency))
        : fail({ code: 'cannot-compute', reason: 'outside-valid-range' }),
    ),
    costEstimate: chain(all([litres, price]), ([used, { perLitre }]) =>
      scale(used, perLitre.toNumber(), 'money/month'),
    ),
    assumptions,
  }
}

/** Money per rack is shown to a thousandth of the minor unit: a rack costs a few cents. */
export const roundPerRack = (amount: Decimal, currency: CurrencyCode): Decimal =>
  amount.toDecimalPlaces(minorDigits(currency) + 3, Decimal.ROUND_HALF_UP)
