import { chain, fail, ok, type Outcome } from '../outcome'
import type { WindowBasis } from '../records'
import { onBasis, type DoseContext } from './on-basis'
import { exactly } from '../statistics/make-estimate'
import { rinseVolume } from './rinse-volume'

/**
 * The dose in mL/rack that gives `value` on a basis: the inverse of `onBasis` on the figures as they stand.
 * ppm v/v: D = 1000 V p / (1e6 - p), exact. All others go straight with the dose, so D = value / (what 1 mL gives).
 *
 * Problems: those of `onBasis`; `number-out-of-range` for ppm from a million up; `outside-valid-range`.
 */
export function requiredDose(basis: WindowBasis, value: number, context: DoseContext): Outcome<number> {
  const dose =
    basis === 'mL-per-rack'
      ? ok(value)
      : basis === 'ppm-vv'
        ? chain(rinseVolume(context.rinse), (water) => ok((1000 * water.value * value) / (1e6 - value)))
        : chain(exactly(1, 'mL/rack'), (one) =>
            chain(onBasis(basis, one, context), (perMl) => ok(value / perMl.value)),
          )
  if (!dose.ok) return dose
  return Number.isFinite(dose.value) && dose.value >= 0
    ? dose
    : fail({ code: 'cannot-compute', reason: 'outside-valid-range' })
}
