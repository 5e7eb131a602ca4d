import { oncePerCompany } from '../once'
import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { Pump, TargetWindow } from '../records'
import { doseSeconds } from './dose-seconds'
import type { ProbedPump } from './held-by-probe'
import type { DoseContext } from './on-basis'
import { readWindow } from './read-window'
import { requiredDose } from './required-dose'

/** Flows that would put the dose at the edges and the target of a window, mL/min. */
export interface RequiredFlow {
  readonly low: number
  readonly target: number
  readonly high: number
}

/**
 * What the pump must deliver for a window: q = 60 D / t for the dose each edge needs, t the seconds per rack.
 *
 * Problems: those of `readWindow`, `requiredDose` and `doseSeconds`.
 */
export const requiredFlow = oncePerCompany((pump: AimedPump, context: DoseContext): Outcome<RequiredFlow> => {
  return chain(all([readWindow(pump.window, context), doseSeconds(pump)]), ([window, seconds]) => {
    const flowFor = (value: number): Outcome<number> =>
      chain(requiredDose(window.basis, value, context), (dose) => ok((60 * dose) / seconds.value))
    return chain(
      all([orNone(flowFor(window.low)), flowFor(window.target), flowFor(window.high)]),
      ([low, target, high]) =>
        [low, target, high].every(Number.isFinite)
          ? ok({ low, target, high })
          : fail({ code: 'cannot-compute', reason: 'outside-valid-range' }),
    )
  })
})

/** Where the second tank alone brings the low edge, no dose at all is enough for it. */
const orNone = (flow: Outcome<number>): Outcome<number> =>
  !flow.ok && flow.problem.code === 'cannot-compute' && flow.problem.reason === 'more-arrives' ? ok(0) : flow

type AimedPump = Pick<Pump, 'doseSeconds' | 'doseSecondsSpread'> &
  ProbedPump & { readonly window: TargetWindow | null }
