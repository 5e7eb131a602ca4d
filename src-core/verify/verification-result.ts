import { all, chain, ok, type Outcome } from '../outcome'
import type { Day, Id, Instrument, Product, Pump, Verification, VerificationMethod } from '../records'
import { strengthToday } from '../sanitize/strength-today'
import type { Estimate } from '../statistics/estimate'
import { compareStrengths } from './agreement'
import { distrust } from './distrust'
import { measuredStrength } from './measured-strength'
import { predictedStrength, type Predictions } from './predicted-strength'
import type { Agreement, VerifiedUnit } from './types'

/** Everything around the checks of one pump. */
export interface VerificationInput {
  readonly pump: Pick<Pump, 'feeds'>
  readonly product: Product | null
  readonly instruments: readonly Instrument[]
  readonly predictions: Predictions
  readonly racksSinceFill: number | null
  readonly racksBeforeTest: number | null
  /** the pump's strengths before the last change of the visit; null where nothing was changed */
  readonly before: Predictions['strengths'] | null
}

export interface VerifiedStrength {
  readonly verificationId: Id
  readonly method: VerificationMethod
  readonly measured: Outcome<Estimate<VerifiedUnit>>
  readonly predicted: Outcome<Estimate<VerifiedUnit>>
  readonly agreement: Outcome<Agreement>
}

/**
 * One chemical check against what the flow predicts, through both uncertainties. A check that cannot be predicted still
 * stands as measured; one that cannot be read says why. Problems: those of its parts.
 */
export function verificationResult(check: Verification, around: VerificationInput): VerifiedStrength {
  const instrument = around.instruments.find((one) => one.id === check.instrumentId) ?? null
  const measured = measuredStrength(check, instrument)
  const predicted = predictedStrength(check, around.pump, around.predictions)
  const before =
    around.before === null
      ? null
      : predictedStrength(check, around.pump, { ...around.predictions, strengths: around.before })
  return {
    verificationId: check.id,
    method: check.method,
    measured,
    predicted,
    agreement: chain(all([measured, predicted]), ([m, p]) =>
      chain(compareStrengths(m, p), (compared) =>
        ok({
          ...compared,
          distrust: compared.agrees
            ? null
            : distrust({
                check,
                measured: m,
                predicted: p,
                racksSinceFill: around.racksSinceFill,
                racksBeforeTest: around.racksBeforeTest,
                before: before !== null && before.ok ? before.value : null,
                strength: strengthOn(around.product, check.at.slice(0, 10)),
              }),
        }),
      ),
    ),
  }
}

function strengthOn(product: Product | null, day: Day) {
  const today = product === null ? null : strengthToday(product, day)
  return today !== null && today.ok ? today.value : null
}
