import { tankStrength } from '../dose/concentration'
import { all, chain, fail, ok, type Outcome } from '../outcome'
import type { Machine, Pump } from '../records'
import type { Estimate } from '../statistics/estimate'
import { exactly } from '../statistics/make-estimate'
import { inUnit } from '../units/quantity'
import { read, readNumber } from '../units/read'
import { racksBeforeTest, timeConstant } from './decay'
import { volumeOf } from './model'
import { waterThatLeaves } from '../dose/wash-water'
import { modelOf } from './read-model'
import { strengthOverService } from './service'
import type { StrengthSeries } from './service-summary'
import { settingNotes } from './setting-notes'
import { initialChargeSeconds, rechargeSeconds } from './pump-seconds'
import { tankWindow, type TankWindow } from './tank-target'
import type { SettingNote, WashModel } from './types'

/** One pump that feeds a wash, worked out. */
export interface TankResult {
  readonly model: Outcome<WashModel>
  readonly window: Outcome<TankWindow>
  /** what the setting heads for */
  readonly settlesAt: Outcome<Estimate<'g/L-product'>>
  /** pump seconds per rack that would hold the target */
  readonly recharge: Outcome<Estimate<'s'>>
  /** pump seconds after a fresh fill that would start on the target; a problem on dump-and-refill machines */
  readonly initialCharge: Outcome<Estimate<'s'>>
  /** racks in which a difference falls to 1/e */
  readonly timeConstant: Outcome<number>
  readonly racksBeforeTest: Outcome<number>
  readonly service: Outcome<StrengthSeries>
  readonly notes: readonly SettingNote[]
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
  const model = modelOf(machine, rinse)
  const water = waterThatLeaves(machine, rinse)
  const window = tankWindow(
    pump,
    chain(density, (rho) => ok(rho.value)),
  )
  const recharge = probe
    ? PROBE
    : chain(all([window, density, water, flow]), ([w, rho, r, q]) => rechargeSeconds(w.target, rho, r, q))
  const seconds = recharge.ok ? recharge.value.value : null
  return {
    model,
    window,
    settlesAt: probe
      ? PROBE
      : chain(all([input.dose, density, water]), ([dose, rho, r]) => tankStrength(dose, rho, r)),
    recharge,
    initialCharge: chain(all([window, density, model, flow]), ([w, rho, m, q]) =>
      m.kind === 'dump-and-refill'
        ? fail({ code: 'cannot-compute', reason: 'no-initial-charge' })
        : chain(exactly(m.volume, 'L'), (volume) => initialChargeSeconds(w.target, rho, volume, q)),
    ),
    timeConstant: chain(model, (m) => ok(timeConstant(m))),
    racksBeforeTest: chain(model, (m) => ok(racksBeforeTest(m))),
    service: service(input, model, water, window),
    notes: settingNotes({
      model: model.ok ? model.value : null,
      carriedOutKnown: machine.wash.kind !== 'tank' || machine.wash.carriedOut !== null,
      probe,
      seconds,
      flow: flow.ok ? flow.value.value : null,
      pulsesPerMinute: pulses(pump),
      cycleSeconds: input.cycleSeconds ?? null,
    }),
  }
}

const PROBE = fail({ code: 'cannot-compute', reason: 'probe-controlled' })

function service(
  input: TankInput,
  model: Outcome<WashModel>,
  water: Outcome<Estimate<'L'>>,
  window: Outcome<TankWindow>,
): Outcome<StrengthSeries> {
  const { machine, pump } = input
  const racks = readNumber(machine.racksPerDay, 'machine.racksPerDay', { above: 0 })
  const fills =
    machine.wash.kind === 'tank' && machine.wash.drainAndFillsPerDay !== null
      ? readNumber(machine.wash.drainAndFillsPerDay, 'wash.drainAndFillsPerDay', { low: 0 })
      : ok(1)
  const needed = all([model, water, racks, fills])
  if (!needed.ok) return needed
  const [m, r, perDay, fillsPerDay] = needed.value
  const limits = window.ok ? window.value : null
  const common = { model: m, racks: perDay, fills: fillsPerDay, window: limits }
  if (pump.control === 'probe')
    return chain(window, ({ target }) =>
      strengthOverService({ ...common, dose: target * r.value, charge: target * volumeOf(m) }),
    )
  return chain(all([input.dose, input.density, charge(input, m, window)]), ([dose, rho, grams]) =>
    strengthOverService({
      ...common,
      dose: dose.value * rho.value,
      charge: grams,
      feedUncertainty: dose.value > 0 ? dose.expanded / dose.value : 0,
    }),
  )
}

/** g into a fresh fill: what the pump gives in its seconds; without seconds, what the target takes. */
function charge(input: TankInput, model: WashModel, window: Outcome<TankWindow>): Outcome<number> {
  if (model.kind === 'dump-and-refill') return ok(0)
  const { initialChargeSeconds } = input.pump
  if (initialChargeSeconds === null) return chain(window, ({ target }) => ok(target * model.volume))
  const seconds = read(initialChargeSeconds, 'pump.initialChargeSeconds', { low: 0 })
  return chain(all([seconds, input.flow, input.density]), ([s, q, rho]) =>
    ok((inUnit(s, 's') * q.value * rho.value) / 60),
  )
}

function pulses(pump: Pump): number | null {
  if (pump.rollers === null) return null
  const turns = readNumber(pump.rollers.perMinute, 'pump.rollers.perMinute', { above: 0 })
  const rollers = readNumber(pump.rollers.count, 'pump.rollers.count', { above: 0 })
  return turns.ok && rollers.ok ? turns.value * rollers.value : null
}
