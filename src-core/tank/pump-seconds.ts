import { chain, type Outcome } from '../outcome'
import type { Estimate } from '../statistics/estimate'
import { product, quotient } from '../statistics/propagate'

/**
 * How long the pump runs per rack to hold a target, s: 60 x target (g/L) x water (L) over density (g/mL) and flow
 * (mL/min). Problems: `zero-flow`, `outside-valid-range`.
 */
export const rechargeSeconds = (
  target: number,
  density: Estimate<'g/mL'>,
  water: Estimate<'L'>,
  flow: Estimate<'mL/min'>,
): Outcome<Estimate<'s'>> => secondsOf(target, density, water, flow)

/**
 * How long the pump runs after a fresh fill, s: the same with the tank's volume in place of the water per rack.
 * Problems: `zero-flow`, `outside-valid-range`.
 */
export const initialChargeSeconds = (
  target: number,
  density: Estimate<'g/mL'>,
  volume: Estimate<'L'>,
  flow: Estimate<'mL/min'>,
): Outcome<Estimate<'s'>> => secondsOf(target, density, volume, flow)

function secondsOf(
  target: number,
  density: Estimate<'g/mL'>,
  litres: Estimate<'L'>,
  flow: Estimate<'mL/min'>,
): Outcome<Estimate<'s'>> {
  if (!(flow.value > 0)) return { ok: false, problem: { code: 'cannot-compute', reason: 'zero-flow' } }
  return chain(product([density, flow], 'mL/min', { shared: ['density'] }), (perMinute) =>
    quotient(litres, perMinute, 's', { times: 60 * target, shared: ['density', 'rinse-volume'] }),
  )
}
