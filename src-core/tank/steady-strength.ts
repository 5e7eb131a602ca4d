import { chain, type Outcome } from '../outcome'
import type { Estimate } from '../statistics/estimate'
import { product, quotient } from '../statistics/propagate'

/**
 * Strength a wash settles at, g product per litre: dose (mL/rack) x density (g/mL) over the water that leaves per rack
 * (L). It does not depend on the tank's volume, nor on how the dose is fed: m/r is the mean either way.
 * A density that came into the dose through a weighed run is the same density, so its doubt cancels.
 *
 * Problems: `outside-valid-range`. Source: mass balance, c = m/r_net (derived).
 */
export const steadyStrength = (
  dose: Estimate<'mL/rack'>,
  density: Estimate<'g/mL'>,
  water: Estimate<'L'>,
): Outcome<Estimate<'g/L-product'>> =>
  chain(product([dose, density], 'g/rack', { shared: ['density'] }), (grams) =>
    quotient(grams, water, 'g/L-product', { shared: ['rinse-volume'] }),
  )

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
