import { oncePerCompany } from '../once'
import { chain, fail, ok, type Outcome } from '../outcome'
import type { TargetWindow, WindowBasis } from '../records'
import { readNumber } from '../units/read'
import { productStrength } from './product-strength'
import { requiredDose } from './required-dose'
import { activeOf } from './nominal'
import type { DoseContext } from './on-basis'
import { BASIS_UNIT } from './types'

/** A target window in plain numbers, all in the unit of its basis. */
export interface WindowNumbers {
  readonly basis: WindowBasis
  readonly low: number
  readonly target: number
  readonly high: number
}

/**
 * Most available chlorine a food-contact rinse may carry, mg/L. Source: 40 CFR 180.940(a), number from memory,
 * consistent with county guidance that was read. A target above it is blocked whatever the label says.
 */
export const CHLORINE_LIMIT = 200

/**
 * Reads a window: 0 <= low <= target <= high, target above 0, unit of its own basis. A window that would put more than
 * 200 mg/L available chlorine on the ware is refused, whatever basis it is given on.
 *
 * Problems: `missing` window; `number-out-of-range` and the rest of `readNumber` under `pump.window`.
 */
export const readWindow = (window: TargetWindow | null, context: DoseContext): Outcome<WindowNumbers> =>
  window === null
    ? fail({ code: 'missing', field: 'pump.window', needed: 'window' })
    : numbersOf(window, context)

const numbersOf = oncePerCompany((window: TargetWindow, context: DoseContext): Outcome<WindowNumbers> => {
  const target = readNumber(window.target, 'pump.window.target', { above: 0, high: LARGEST[window.basis] })
  if (!target.ok) return target
  const low = readNumber(window.low, 'pump.window.low', { low: 0, high: target.value })
  if (!low.ok) return low
  const high = readNumber(window.high, 'pump.window.high', { low: target.value, high: LARGEST[window.basis] })
  if (!high.ok) return high
  const numbers = { basis: window.basis, low: low.value, target: target.value, high: high.value }
  return chlorineAllows(numbers, context)
})

/** Beyond these a number is a slip of the pen: a window in its unit stays far below. Judgement. */
const LARGEST: Readonly<Record<WindowBasis, number>> = {
  'mL-per-rack': 1000,
  'ppm-vv': 100_000,
  'mg-per-L-product': 100_000,
  'mg-per-L-active': 10_000,
  'g-per-L-tank': 100,
}

function chlorineAllows(window: WindowNumbers, context: DoseContext): Outcome<WindowNumbers> {
  const strength = productStrength(context.product)
  if (window.basis === 'g-per-L-tank' || !strength.ok || strength.value?.isChlorine !== true)
    return ok(window)
  for (const edge of ['target', 'high'] as const) {
    const active =
      window.basis === 'mg-per-L-active'
        ? ok(window[edge])
        : chain(requiredDose(window.basis, window[edge], context), (dose) => activeOf(dose, context))
    if (active.ok && active.value > CHLORINE_LIMIT * (1 + 1e-9))
      return fail({
        code: 'number-out-of-range',
        field: `pump.window.${edge}`,
        low: null,
        high: limitOnBasis(window, active.value, edge),
        unit: BASIS_UNIT[window.basis],
      })
  }
  return ok(window)
}

/** The chlorine limit in the window's own unit, to three digits: strength goes straight with the dose. */
const limitOnBasis = (window: WindowNumbers, active: number, edge: 'target' | 'high'): number =>
  Number(((window[edge] * CHLORINE_LIMIT) / active).toPrecision(3))
