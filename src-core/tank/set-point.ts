import { chain, fail, ok, type Outcome } from '../outcome'
import type { TankWindow } from '../dose/tank-window'
import type { Verification } from '../records'
import { readNumber } from '../units/read'
import { setPointFor } from './probe'

/** Set points, µS/cm at 25 °C, that hold the window of a probe-controlled tank. */
export interface SetPoint {
  readonly low: number
  readonly target: number
  readonly high: number
  /** what one g/L adds, and the plain water, as the check has them, µS/cm */
  readonly perGram: number
  readonly water: number
}

/**
 * The set point from the last conductivity check that says what the plain water reads and what one g/L of product adds:
 * water + perGram x strength. `checks` in the order made.
 *
 * Problems: `missing` conductivity-check where no such check was made; those of the window, of the numbers, and of `setPointFor`.
 */
export function setPointOf(
  checks: readonly Pick<Verification, 'method' | 'factor' | 'blank'>[],
  window: Outcome<TankWindow>,
): Outcome<SetPoint> {
  const check = checks.findLast(
    (one) => one.method === 'conductivity' && one.factor !== null && one.blank !== null,
  )
  if (check === undefined)
    return fail({ code: 'missing', field: 'verification.factor', needed: 'conductivity-check' })
  return chain(window, ({ low, target, high }) =>
    chain(readNumber(check.factor, 'verification.factor', { above: 0, high: 1e6 }), (perGram) =>
      chain(readNumber(check.blank, 'verification.blank', { low: 0, high: 1e7 }), (water) => {
        const at = (strength: number): Outcome<number> => setPointFor({ water, perGram }, strength)
        return chain(at(low), (least) =>
          chain(at(target), (middle) =>
            chain(at(high), (most) => ok({ low: least, target: middle, high: most, perGram, water })),
          ),
        )
      }),
    ),
  )
}
