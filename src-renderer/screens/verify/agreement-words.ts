import { DISTRUST_WORDS } from '#core/verify/distrust-words'
import type { Agreement } from '#core/verify/types'
import { formatNumber } from '#core/units/format'
import type { DecimalSign } from '#core/units/parse'

export interface AgreementWords {
  readonly tone: 'good' | 'warn'
  readonly word: string
  readonly why: string
}

/** Whether reading and prediction agree, and which to doubt when they do not. */
export function agreementWords(agreement: Agreement, sign: DecimalSign): AgreementWords {
  const { z, agrees, relative, distrust } = agreement
  const apart =
    relative === null || Math.abs(relative) < 0.0005
      ? ''
      : `The reading is ${formatNumber(100 * Math.abs(relative), 2, sign)} % ${relative > 0 ? 'above' : 'below'} the prediction`
  if (agrees)
    return {
      tone: 'good',
      word: 'Reading and flow agree',
      why: apart === '' ? 'They say the same.' : `${apart}: no more than both may be off.`,
    }
  return {
    tone: 'warn',
    word: 'Reading and flow differ',
    why: `${apart}, ${formatNumber(z, 2, sign)} times what both may be off by. ${distrust === null ? '' : DISTRUST_WORDS[distrust]}`.trim(),
  }
}
