import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { WindowBasis } from '../records'
import { arriving, onBasis, type DoseContext } from './on-basis'
import { exactly } from '../statistics/make-estimate'
import { rinseVolume } from './rinse-volume'

/**
 * The dose in mL/rack that gives `value` on a basis: the inverse of `onBasis` on the figures as they stand.
 * ppm v/v: D = 1000 V p / (1e6 - p), exact. All others go straight with the dose, so D = value / (what 1 mL gives); in
 * a tank, what comes over from the second tank is taken off the value first.
 *
 * Problems: those of `onBasis`; `more-arrives` when the second tank alone brings more than the value; `number-out-of-range` for ppm from a million up; `outside-valid-range`.
 */
export function requiredDose(basis: WindowBasis, value: number, context: DoseContext): Outcome<number> {
  const dose =
    basis === 'mL-per-rack'
      ? ok(value)
      : basis === 'ppm-vv'
        ? chain(rinseVolume(context.rinse), (water) => ok((1000 * water.value * value) / (1e6 - value)))
        : chain(all([perMillilitre(basis, context), besides(basis, context)]), ([perMl, more]) =>
            more > value && more > 0 ? moreArrives : ok((value - more) / perMl),
          )
  if (!dose.ok) return dose
  return Number.isFinite(dose.value) && dose.value >= 0
    ? dose
    : fail({ code: 'cannot-compute', reason: 'outside-valid-range' })
}

const moreArrives = fail({ code: 'cannot-compute', reason: 'more-arrives' })

/** What one mL per rack adds on a basis, whatever comes over from a second tank. */
const perMillilitre = (basis: WindowBasis, context: DoseContext): Outcome<number> =>
  chain(all([exactly(1, 'mL/rack'), exactly(0, 'mL/rack')]), ([one, none]) =>
    chain(all([onBasis(basis, one, context), onBasis(basis, none, context)]), ([with1, without]) =>
      ok(with1.value - without.value),
    ),
  )

const besides = (basis: WindowBasis, context: DoseContext): Outcome<number> =>
  basis === 'g-per-L-tank' ? chain(arriving(context), (more) => ok(more?.value ?? 0)) : ok(0)
