import type { Product } from '#core/records/index'
import {
  sanitizerAdvice,
  type SanitizerAdvice,
  type SanitizerSubstance,
} from '#core/sanitize/sanitizer-advice'
import type { CodeLimits } from '#core/sanitize/types'
import { lastReading, type VerifiedPump } from './verified-pump'

const substanceOf = (product: Product | null): SanitizerSubstance | null => {
  const strength = product?.strength
  if (strength === undefined || strength.kind === 'none') return null
  if (strength.kind === 'trade-percent') return 'available-chlorine'
  const { active } = strength
  return active === 'available-chlorine' || active === 'quat' || active === 'iodine' ? active : null
}

/**
 * What label and code say about the sanitizing rinse of a pump: on the last check of its strength where there is one,
 * else on what the flow predicts. Null for a pump that sanitizes nothing, or whose strength nobody knows.
 */
export function sanitizerOf(
  of: VerifiedPump,
  limits: CodeLimits,
): { readonly advice: SanitizerAdvice; readonly from: string } | null {
  const substance = substanceOf(of.product)
  if (substance === null || of.pump.feeds !== 'final-rinse') return null
  const measured = (of.result?.verifications ?? [])
    .flatMap((one) =>
      one.measured.ok && one.measured.value.unit === 'mg/L-active' ? [one.measured.value] : [],
    )
    .at(-1)
  const predicted = (of.result?.asLeft?.strengths ?? []).flatMap((one) =>
    one.ok && one.value.unit === 'mg/L-active' ? [one.value] : [],
  )[0]
  const strength = measured ?? predicted
  if (strength === undefined) return null
  const advice = sanitizerAdvice(
    {
      substance,
      strength,
      pH:
        lastReading(of.readings, 'pH-rinse')?.count ??
        lastReading(of.readings, 'pH-rinse')?.value?.value ??
        null,
      temperature: lastReading(of.readings, 'rinse-temperature')?.value ?? null,
      hardness: lastReading(of.readings, 'hardness-rinse')?.value ?? of.water.hardness,
      label: of.product?.labelLimits ?? null,
      product: of.product,
    },
    limits,
  )
  return {
    advice,
    from: measured === undefined ? 'held against what the flow predicts' : 'held against the last check',
  }
}
