import { coverage95 } from '../statistics/distributions'
import type { Estimate } from '../statistics/estimate'
import { HORIZON_DAYS } from './limits'
import type { Decay } from './types'

export interface LeavingDays {
  readonly edge: 'low' | 'high'
  readonly days: number | null
  readonly earliest: number | null
  readonly latest: number | null
  /** day by which the flow has left with a chance of one in six */
  readonly prudent: number | null
}

/**
 * Days until a flow that changes as ln q(t) = ln q - rate x t leaves `low`..`high` (all mL/min), with a 95 % interval
 * from both the flow's uncertainty and the rate's (Fieller's theorem: the days at which the interval of ln q(t) meets
 * the edge). The edge that may be met first is the one told; a low of 0 is
 * never met. Null: not within ten years. 0 days: outside already.
 */
export function leavingDays(
  flow: Estimate<'mL/min'>,
  decay: Pick<Decay, 'rate' | 'standard' | 'degreesOfFreedom'>,
  { low, high }: { readonly low: number; readonly high: number },
): LeavingDays {
  const { rate, standard, degreesOfFreedom } = decay
  const relative = flow.standard / flow.value
  const meet = (distance: number, towards: number): Omit<LeavingDays, 'edge'> => ({
    ...crossing(distance, towards, relative, standard, coverage95(degreesOfFreedom)),
    prudent: crossing(distance, towards, relative, standard, 1).earliest,
  })
  const up = { edge: 'high' as const, ...meet(Math.log(high / flow.value), -rate) }
  if (!(low > 0)) return up
  const down = { edge: 'low' as const, ...meet(Math.log(flow.value / low), rate) }
  const first = (one: LeavingDays): number => one.days ?? HORIZON_DAYS + (one.earliest ?? HORIZON_DAYS)
  return first(up) < first(down) ? up : down
}

/** `distance` to the edge in ln q, closing by `speed` a day. */
function crossing(
  distance: number,
  speed: number,
  levelStandard: number,
  speedStandard: number,
  k: number,
): Omit<LeavingDays, 'edge' | 'prudent'> {
  const days = distance <= 0 ? 0 : speed > 0 ? within(distance / speed) : null
  const a = speed * speed - (k * speedStandard) ** 2
  const b = -2 * distance * speed
  const c = distance * distance - (k * levelStandard) ** 2
  const roots = quadratic(a, b, c)
  const reaches = roots.filter((t) => t >= 0 && distance - speed * t >= 0)
  const passes = roots.filter((t) => t > 0 && distance - speed * t < 0)
  const unsure = distance <= k * levelStandard
  return {
    days,
    earliest: unsure ? 0 : reaches.length === 0 ? null : within(Math.min(...reaches)),
    latest: distance <= 0 ? 0 : passes.length === 0 ? null : within(Math.max(...passes)),
  }
}

const within = (days: number): number | null => (days <= HORIZON_DAYS ? days : null)

function quadratic(a: number, b: number, c: number): readonly number[] {
  if (a === 0) return b === 0 ? [] : [-c / b]
  const discriminant = b * b - 4 * a * c
  if (!(discriminant >= 0)) return []
  // The stable form: no difference of nearly equal numbers.
  const q = -0.5 * (b + (b < 0 ? -1 : 1) * Math.sqrt(discriminant))
  return [q / a, ...(q === 0 ? [] : [c / q])].filter(Number.isFinite)
}
