import { all, chain, ok, type Outcome } from '../outcome'
import type { CurrencyCode, Day, Machine, Product, Pump } from '../records'
import { initialCharge, type Charge } from './charges'
import { containerOf } from './container'
import type { LitresInput } from './month-litres'
import { perRack } from './per-rack'
import { primingLoss } from './priming'
import type { PumpSetting, PumpUse, RackRate } from './types'

export interface PumpLitresInput {
  readonly pump: Pump
  readonly machine: Machine
  readonly product: Product | null
  readonly currency: CurrencyCode
  /** the day whose price, and container size, count */
  readonly day: Day
  readonly racks: Outcome<RackRate>
  readonly setting: PumpSetting | null
}

export interface PumpLitres {
  readonly doseFrom: PumpUse['doseFrom']
  readonly dose: PumpUse['dose']
  readonly charge: Outcome<Charge>
  readonly priming: Outcome<number | null>
  /** null: the pump has no product */
  readonly container: Outcome<number> | null
  /** everything that the litres of a span are made from */
  readonly inputs: Outcome<LitresInput>
}

/** Gathers what a pump's litres depend on, apart from the days: dose, initial charge, priming loss, container, racks. */
export function pumpLitres(input: PumpLitresInput): PumpLitres {
  const { pump, machine, product, setting } = input
  const flow = setting !== null && setting.flow !== null && setting.flow.ok ? setting.flow.value.value : null
  const { doseFrom, dose } = perRack(pump, machine, product, setting)
  const charge = initialCharge(pump, machine, product, flow)
  const priming = primingLoss(pump, flow)
  const container = product === null ? null : containerOf(product, input.day, input.currency)
  return {
    doseFrom,
    dose,
    charge,
    priming,
    container,
    inputs: chain(all([input.racks, dose, charge, priming]), ([rate, perRackDose, perFill, prime]) =>
      ok({
        racks: rate,
        dose: perRackDose,
        charge: perFill,
        prime,
        container: container !== null && container.ok ? container.value : null,
      }),
    ),
  }
}
