import { activeOfPpm } from '../dose/nominal'
import { BASIS_UNIT, type BasisUnit } from '../dose/types'
import { chain, ok, type Outcome } from '../outcome'
import type { NumberText, Product } from '../records'
import type { Estimate } from '../statistics/estimate'
import { readNumber } from '../units/read'
import type { Limit } from './types'

/**
 * The strength a product's label allows, as limits in mg/L active. A label in ppm v/v of product is put into that by the
 * recorded strength of `product`; none where that is not known, or where the label speaks of a tank or says nothing.
 */
export const labelLimits = (
  label: Product['labelLimits'],
  product: Product | null = null,
): readonly Limit[] =>
  label === null || label.basis === 'g-per-L-tank'
    ? []
    : [...limit('min', label.low, label.basis, product), ...limit('max', label.high, label.basis, product)]

function limit(
  bound: 'min' | 'max',
  text: NumberText | null,
  basis: 'mg-per-L-active' | 'ppm-vv',
  product: Product | null,
): readonly Limit[] {
  const active = chain(readNumber(text, 'product.labelLimits', { low: 0 }), (value) =>
    basis === 'ppm-vv' ? activeOfPpm(value, product) : ok(value),
  )
  if (!active.ok) return []
  return [
    {
      id: 'label',
      what: `strength on the label${basis === 'ppm-vv' ? `, ${text ?? ''} ppm v/v of product` : ''}`,
      bound,
      figures: [{ value: active.value, unit: 'mg/L-active' }],
      source: 'the product’s label, as recorded',
      how: 'record',
    },
  ]
}

/**
 * Whether one of a test's concentrations lies outside what the label allows on the label's own basis. False where the
 * label says nothing, or where nothing is known on its basis.
 */
export function isOutsideLabel(
  label: Product['labelLimits'],
  strengths: readonly Outcome<Estimate<BasisUnit>>[],
): boolean {
  if (label === null) return false
  const known = strengths.find((one) => one.ok && one.value.unit === BASIS_UNIT[label.basis])
  if (known === undefined || !known.ok) return false
  const [low, high] = [label.low, label.high].map((text) => readNumber(text, 'product.labelLimits'))
  return (
    (low?.ok === true && known.value.value < low.value) ||
    (high?.ok === true && known.value.value > high.value)
  )
}
