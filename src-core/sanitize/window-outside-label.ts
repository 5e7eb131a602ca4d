import { onBasis, type DoseContext } from '../dose/on-basis'
import { requiredDose } from '../dose/required-dose'
import { chain, ok, type Outcome } from '../outcome'
import type { NumberText, Product, TargetWindow } from '../records'
import { exactly } from '../statistics/make-estimate'
import { readNumber } from '../units/read'

type Label = NonNullable<Product['labelLimits']>

/** Where a window leaves what the label of its product allows. */
export interface LabelBreach {
  /** the number of the window to put right; the target before the ends */
  readonly edge: 'target' | 'high' | 'low'
  readonly side: 'above' | 'below'
  /** the label's own limit, as entered, on the label's own basis */
  readonly limit: NumberText
  readonly basis: Label['basis']
}

/**
 * The first number of a window that lies outside the label of its product, compared on the label's own basis: by the
 * strength, density and rinse water of `context` where the window speaks in another. Null where all lie inside, where
 * the label says nothing, and where a number of either cannot be read or compared.
 */
export function windowOutsideLabel(window: TargetWindow | null, context: DoseContext): LabelBreach | null {
  const label = context.product?.labelLimits ?? null
  if (window === null || label === null) return null
  for (const [edge, side] of [
    ['target', 'above'],
    ['target', 'below'],
    ['high', 'above'],
    ['low', 'below'],
  ] as const) {
    const limit = side === 'above' ? label.high : label.low
    const value = onLabelBasis(window[edge], window.basis, label.basis, context)
    const bound = limit === null ? null : readNumber(limit, 'product.labelLimits', { low: 0 })
    if (limit === null || bound === null || !bound.ok || !value.ok) continue
    // a number that went there and back over a dose is not outside by its last digit
    const slack = 1e-9 * Math.max(bound.value, value.value)
    const over = side === 'above' ? value.value - bound.value : bound.value - value.value
    if (over > slack) return { edge, side, limit, basis: label.basis }
  }
  return null
}

const onLabelBasis = (
  text: NumberText,
  from: TargetWindow['basis'],
  to: Label['basis'],
  context: DoseContext,
): Outcome<number> =>
  chain(readNumber(text, 'pump.window', { low: 0 }), (value) =>
    from === to
      ? ok(value)
      : chain(requiredDose(from, value, context), (dose) =>
          chain(exactly(dose, 'mL/rack'), (one) =>
            chain(onBasis(to, one, context), (there) => ok(there.value)),
          ),
        ),
  )
