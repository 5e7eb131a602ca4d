import { arrivingStrength, pumpAbove } from '../dose/arriving'
import { tankStrength } from '../dose/concentration'
import { tankWindow, type TankWindow } from '../dose/tank-window'
import { waterThatLeaves } from '../dose/wash-water'
import { pulsesPerMinute } from '../drawdown/volume-doubt'
import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { Machine, Pump } from '../records'
import type { Estimate } from '../statistics/estimate'
import { exactly } from '../statistics/make-estimate'
import { sum } from '../statistics/propagate'
import { racksBeforeTest, timeConstant } from './decay'
import { modelOf } from './read-model'
import { serviceOfPair, serviceOfPump } from './service-of-pump'
import type { StrengthSeries } from './service-summary'
import { settingNotes } from './setting-notes'
import { initialChargeSeconds, rechargeSeconds } from './pump-seconds'
import { settled } from './step'
import { otherTank, pairOf, pairRacksBeforeTest, pairTimeConstants, type OtherTank } from './two-tanks'
import type { SettingNote, WashModel } from './types'

/** One pump that feeds a wash, worked out. */
export interface TankResult {
  readonly model: Outcome<WashModel>
  readonly window: Outcome<TankWindow>
  /** what the setting heads for */
  readonly settlesAt: Outcome<Estimate<'g/L-product'>>
  /** fed all at once: the highest and the lowest of every rack once settled, g/L; null where the dose comes with the rinse */
  readonly swing: Outcome<{ readonly peak: number; readonly trough: number }> | null
  /** pump seconds per rack that would hold the target */
  readonly recharge: Outcome<Estimate<'s'>>
  /** pump seconds after a fresh fill that would start on the target; a problem on dump-and-refill machines */
  readonly initialCharge: Outcome<Estimate<'s'>>
  /** racks in which a difference falls to 1/e */
  readonly timeConstant: Outcome<number>
  /** the time constants the wait is made of: of the tank, and of a second one where both count */
  readonly timeConstants: Outcome<readonly number[]>
  readonly racksBeforeTest: Outcome<number>
  readonly service: Outcome<StrengthSeries>
  readonly notes: readonly SettingNote[]
  /** what comes over from the second tank, g/L; null where nothing of the product does */
  readonly arriving: Outcome<Estimate<'g/L-product'>> | null
  /** the other tank of a machine with two; null with one */
  readonly other: OtherTank | null
}

export interface TankInput {
  readonly machine: Machine
  readonly pump: Pump
  readonly flow: Outcome<Estimate<'mL/min'>>
  readonly dose: Outcome<Estimate<'mL/rack'>>
  readonly density: Outcome<Estimate<'g/mL'>>
  /** the machine's fresh final-rinse water per rack */
  readonly rinse: Outcome<Estimate<'L'>>
  readonly cycleSeconds?: number | null
}

/**
 * Everything a screen shows about the wash a pump feeds. Each part stands alone: what one lacks does not take the
 * others away. Under probe control the draw-down does not set the strength, so `settlesAt` and `recharge` say
 * `probe-controlled`, and the service is shown at the target the controller holds.
 */
export function tankResult(input: TankInput): TankResult {
  const { machine, pump, flow, density, rinse } = input
  const probe = pump.control === 'probe'
  const rho = chain(density, (known) => ok(known.value))
  const model = modelOf(machine, rinse, pump.feeds === 'upstream-tank' ? 'upstream-tank' : 'wash-tank')
  const water = waterThatLeaves(machine, rinse)
  const window = tankWindow(pump, rho)
  const pair = pairOf(machine, pump, rinse, rho)
  const above = pumpAbove(machine, pump)
  const arriving = above === null ? null : arrivingStrength(above, rho)
  const more = arriving === null ? ok(0) : chain(arriving, (known) => ok(known.value))
  const recharge = probe
    ? PROBE
    : chain(all([window, density, water, flow, more]), ([w, d, r, q, comes]) =>
        comes > w.target ? MORE_ARRIVES : rechargeSeconds(w.target - comes, d, r, q),
      )
  const seconds = recharge.ok ? recharge.value.value : null
  const pulses = pulsesPerMinute(pump.rollers)
  const parts = { model, water, window, arriving: more }
  const both = pair === null ? null : serviceOfPair(input, parts, pair)
  return {
    model,
    window,
    settlesAt: probe ? PROBE : settlesAt(input, water, arriving),
    swing: probe || above !== null ? null : swing(input, model),
    recharge,
    initialCharge: chain(all([window, density, model, flow]), ([w, d, m, q]) =>
      m.kind === 'dump-and-refill'
        ? fail({ code: 'cannot-compute', reason: 'no-initial-charge' })
        : chain(exactly(m.volume, 'L'), (volume) => initialChargeSeconds(w.target, d, volume, q)),
    ),
    timeConstant: chain(model, (m) => ok(timeConstant(m))),
    timeConstants: pair === null ? chain(model, (m) => ok([timeConstant(m)])) : pairTimeConstants(pair),
    racksBeforeTest: pair === null ? chain(model, (m) => ok(racksBeforeTest(m))) : pairRacksBeforeTest(pair),
    service:
      pair === null || both === null
        ? serviceOfPump(input, parts)
        : chain(both, (known) => ok(known[pair.own])),
    notes: settingNotes({
      model: model.ok ? model.value : null,
      carriedOutKnown: machine.wash.kind !== 'tank' || machine.wash.carriedOut !== null,
      probe,
      seconds,
      flow: flow.ok ? flow.value.value : null,
      pulsesPerMinute: pulses.ok ? pulses.value : null,
      cycleSeconds: input.cycleSeconds ?? null,
    }),
    arriving,
    other: pair === null || both === null ? null : otherTank(pair, density, both),
  }
}

/** Dose over water, and what comes over from the second tank. */
const settlesAt = (
  { dose, density }: TankInput,
  water: Outcome<Estimate<'L'>>,
  arriving: TankResult['arriving'],
): Outcome<Estimate<'g/L-product'>> =>
  chain(all([dose, density, water]), ([D, rho, r]) =>
    chain(all([tankStrength(D, rho, r), arriving ?? ok(null)]), ([own, more]) =>
      more === null ? ok(own) : sum([own, more], 'g/L-product', { shared: ['density'] }),
    ),
  )

function swing({ dose, density }: TankInput, model: Outcome<WashModel>): TankResult['swing'] {
  if (!model.ok || model.value.kind !== 'tank' || model.value.feeding !== 'slug') return null
  const { value } = model
  return chain(all([dose, density]), ([D, rho]) =>
    chain(settled(value, D.value * rho.value), ({ peak, trough }) => ok({ peak, trough })),
  )
}

const MORE_ARRIVES = fail({ code: 'cannot-compute', reason: 'more-arrives' })
const PROBE = fail({ code: 'cannot-compute', reason: 'probe-controlled' })
