import { coverage95 } from '../statistics/distributions'
import type { Decay } from './types'

export interface ForecastPoint {
  /** days from the last test */
  readonly days: number
  readonly value: number
  /** ends of the 95 % interval */
  readonly low: number
  readonly high: number
}

const STEPS = 16

/**
 * The way a value goes on as ln v(t) = ln v - rate x t, from today to `days` later, with the 95 % interval of its own
 * uncertainty and that of the rate. Value and standard uncertainty in one unit; points in that unit.
 */
export function forecast(
  from: { readonly value: number; readonly standard: number },
  decay: Pick<Decay, 'rate' | 'standard' | 'degreesOfFreedom'>,
  days: number,
): readonly ForecastPoint[] {
  if (!(from.value > 0 && days > 0)) return []
  const k = coverage95(decay.degreesOfFreedom)
  return Array.from({ length: STEPS + 1 }, (_, step) => {
    const t = (days * step) / STEPS
    const level = Math.log(from.value) - decay.rate * t
    const reach = k * Math.hypot(from.standard / from.value, t * decay.standard)
    return { days: t, value: Math.exp(level), low: Math.exp(level - reach), high: Math.exp(level + reach) }
  })
}
