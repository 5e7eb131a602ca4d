import type { NumberText, Product } from '../records'
import { readNumber } from '../units/read'
import type { Limit } from './types'

/** The strength a product's label allows, as limits; none where the label speaks in another basis or says nothing. */
export const labelLimits = (label: Product['labelLimits']): readonly Limit[] =>
  label === null || label.basis !== 'mg-per-L-active'
    ? []
    : [...limit('min', label.low), ...limit('max', label.high)]

function limit(bound: 'min' | 'max', text: NumberText | null): readonly Limit[] {
  const value = readNumber(text, 'product.labelLimits', { low: 0 })
  if (!value.ok) return []
  return [
    {
      id: 'label',
      what: 'strength on the label',
      bound,
      figures: [{ value: value.value, unit: 'mg/L-active' }],
      source: 'the product’s label, as recorded',
      how: 'record',
    },
  ]
}
