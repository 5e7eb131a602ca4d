import type { PumpWork } from '#core/records/index'
import type { Estimate } from '#core/statistics/estimate'
import { formatEstimate } from '#core/units/format'
import type { DecimalSign } from '#core/units/parse'
import type { PumpVisit } from '#core/worksheet/types'
import { agreementWords } from '../verify/agreement-words'
import { METHOD_WORDS } from '../verify/check-words'

/** Each chemical check of a pump in one line: how, what it read, and how that stands to what the flow predicts. */
export function checkLines(
  work: PumpWork | undefined,
  pump: PumpVisit | undefined,
  sign: DecimalSign,
): readonly string[] {
  const show = (figure: unknown): string => formatEstimate(figure as Estimate, sign).whole
  return (work?.verifications ?? []).flatMap((check) => {
    const result = pump?.verifications.find((one) => one.verificationId === check.id)
    if (result === undefined || !result.measured.ok) return []
    const predicted = result.predicted.ok ? `; the flow predicts ${show(result.predicted.value)}` : ''
    const agrees = result.agreement.ok ? `. ${agreementWords(result.agreement.value, sign).word}` : ''
    return [`${METHOD_WORDS[check.method]}: ${show(result.measured.value)}${predicted}${agrees}.`]
  })
}
