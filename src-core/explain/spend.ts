import { all, chain, fail, ok, type Outcome } from '../outcome'
import { priceOn } from '../spend/price'
import { PRIME_HOLD_SECONDS } from '../spend/priming'
import { pumpLitres } from '../spend/pump-litres'
import { pumpUse, type PumpUseInput } from '../spend/pump-use'
import { STATED_SPREAD } from '../spend/racks'
import type { RackRate, UseAssumption } from '../spend/types'
import type { Span } from '../spend/span'
import type { Estimate } from '../statistics/estimate'
import { formatEstimate } from '../units/format'
import type { DecimalSign } from '../units/parse'
import { SOURCE_NAMES } from './source-names'
import type { Working } from './types'
import { line, put } from './working'

const ASSUMPTIONS: Readonly<Record<UseAssumption, string>> = {
  'racks-spread': `Nobody said how well the racks per day are known: ${STATED_SPREAD} % (standard) is taken.`,
  'no-initial-charge': 'Nothing says that this pump charges a fresh tank, so no initial charge is counted.',
  'no-priming-loss': 'Bore and length of the line are not recorded, so nothing is counted for priming.',
  'probe-holds-target': 'A probe holds the target, so use follows the water, not the flow.',
}

/** The working of a machine's racks a month. */
export function explainRacks(rate: RackRate, span: Span, sign: DecimalSign = 'point'): Working {
  const from = rate.counted === null ? 'as stated' : `counted from ${rate.counted.from} to ${rate.counted.to}`
  return {
    title: 'Racks a month',
    formula: 'N = n × d',
    inputs: [
      line('n', `Racks on an ordinary open day, ${from}`, rate.perOpenDay, 'racks'),
      line('d', 'Open days a month, weighted by season and growth', span.rackDays, 'days'),
    ],
    substituted: `N = ${put(rate.perOpenDay, sign)} × ${put(span.rackDays, sign)}`,
    result: line('N', 'Racks a month', rate.perOpenDay * span.rackDays, 'racks'),
    source: 'An average month has 365.25 / 12 days; open days are days per week / 7 of them (derived).',
    assumptions: ['The average month of the coming year: closures left out, seasons and growth counted.'],
  }
}

/** The working of a month's litres of one pump. Problems: those of `pumpUse`. */
export function explainLitres(input: PumpUseInput, sign: DecimalSign = 'point'): Outcome<Working> {
  const use = pumpUse(input)
  return chain(all([pumpLitres(input).inputs, use.litresPerMonth]), ([known, litres]) => {
    const n = known.racks.perOpenDay * input.span.rackDays
    const fills = known.charge.fillsPerOpenDay * input.span.openDays
    const primes = known.prime !== null && known.container !== null
    const share = primes ? (known.prime ?? 0) / 1000 / (known.container ?? 1) : 0
    const loss = primes
      ? [
          line(
            'p',
            `Lost at a container change: the line, and ${PRIME_HOLD_SECONDS} s of running`,
            known.prime ?? 0,
            'mL',
          ),
          line('C', 'Container', (known.container ?? 0) * 1000, 'mL'),
        ]
      : []
    const sum = `(${put(n, sign)} × ${put(known.dose.value, sign)} + ${put(fills, sign)} × ${put(known.charge.perFill, sign)}) / 1000`
    return ok({
      title: 'Litres a month',
      formula: primes ? 'L = (N × D + F × m) / 1000 / (1 − p / C)' : 'L = (N × D + F × m) / 1000',
      inputs: [
        line('N', 'Racks a month', n, 'racks'),
        line('D', 'Dose per rack', known.dose.value, 'mL'),
        line('F', 'Fresh fills of the tank a month', fills, ''),
        line('m', 'Product for one fresh fill', known.charge.perFill, 'mL'),
        ...loss,
      ],
      substituted: primes ? `L = ${sum} / (1 − ${put(share, sign)})` : `L = ${sum}`,
      result: line('L', 'Litres a month', litres.value, 'L'),
      source: 'What goes out is racks times dose, plus fills, plus what priming loses (derived).',
      assumptions: [...doubtWords(litres, sign), ...use.assumptions.map((one) => ASSUMPTIONS[one])],
    })
  })
}

/** How well the litres are known, and what that is due to; nothing of an exact figure. */
function doubtWords(litres: Estimate<'L/month'>, sign: DecimalSign): readonly string[] {
  const most = litres.budget.toSorted((a, b) => b.share - a.share)[0]
  if (most === undefined || litres.expanded === 0) return []
  return [
    `Known to ± ${formatEstimate(litres, sign).expanded} L in 95 of 100 cases, first of all because of ${SOURCE_NAMES[most.source]}.`,
  ]
}

/** The working of a month's money of one pump. Problems: those of `pumpUse` and `priceOn`. */
export function explainCost(input: PumpUseInput, sign: DecimalSign = 'point'): Outcome<Working> {
  const { product } = input
  if (product === null) return fail({ code: 'missing', field: 'pump.productId', needed: 'product' })
  const use = pumpUse(input)
  const price = priceOn(product, input.day, input.currency)
  return chain(all([use.litresPerMonth, use.costPerMonth, price]), ([litres, cost, row]) => {
    const perLitre = row.perLitre.toNumber()
    return ok({
      title: 'Cost a month',
      formula: 'M = L × P / C',
      inputs: [
        line('L', 'Litres a month', litres.value, 'L'),
        line('P', `Price of a container since ${row.from}`, row.perContainer.toNumber(), input.currency),
        line('C', 'Litres in a container', row.containerLitres.toNumber(), 'L'),
      ],
      substituted: `M = ${put(litres.value, sign)} × ${put(perLitre, sign)}`,
      result: line('M', 'Cost a month', cost.toNumber(), input.currency),
      source: 'Use times price per litre (derived).',
      assumptions: ['Rounded half up to the smallest coin; totals are sums of such lines.'],
    })
  })
}
