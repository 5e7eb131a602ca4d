import type { Id, Machine, ProductRole, Pump, PumpTube, Site, TargetWindow } from '#core/records/index'
import { changeById, moveById, removeById } from '../lists'

export interface NewPump {
  readonly id: Id
  readonly name: string
  readonly role: ProductRole
  readonly productId: Id | null
}

/** Where a product of this role usually goes in: detergent into the wash tank, the rest into the final rinse. */
export const usualFeed = (role: ProductRole): Pump['feeds'] =>
  role === 'detergent' || role === 'delimer' ? 'wash-tank' : 'final-rinse'

/** A screw-set, time-controlled pump with nothing known about it but what it doses. */
export const newPump = (input: NewPump): Pump => ({
  ...input,
  feeds: usualFeed(input.role),
  doseSeconds: null,
  doseSecondsSpread: null,
  initialChargeSeconds: null,
  control: 'time',
  setBy: 'screw',
  kind: '',
  rollers: null,
  tube: { fittedOn: null, outsideDiameter: null, bore: null, lineLength: null, replaceAfterDays: null },
  screwStops: { up: null, down: null },
  window: null,
})

const withPumps = (site: Site, machineId: Id, change: (pumps: readonly Pump[]) => readonly Pump[]): Site => {
  const machines = changeById(site.machines, machineId, (machine: Machine) => {
    const pumps = change(machine.pumps)
    return pumps === machine.pumps ? machine : { ...machine, pumps }
  })
  return machines === site.machines ? site : { ...site, machines }
}

export const addPump = (site: Site, machineId: Id, input: NewPump): Site =>
  withPumps(site, machineId, (pumps) => [...pumps, newPump(input)])

export const changePump = (
  site: Site,
  machineId: Id,
  pumpId: Id,
  facts: Partial<Omit<Pump, 'id' | 'tube' | 'window'>>,
): Site => withPumps(site, machineId, (pumps) => changeById(pumps, pumpId, (pump) => ({ ...pump, ...facts })))

export const changeTube = (site: Site, machineId: Id, pumpId: Id, facts: Partial<PumpTube>): Site =>
  withPumps(site, machineId, (pumps) =>
    changeById(pumps, pumpId, (pump) => ({ ...pump, tube: { ...pump.tube, ...facts } })),
  )

export const setWindow = (site: Site, machineId: Id, pumpId: Id, window: TargetWindow | null): Site =>
  withPumps(site, machineId, (pumps) => changeById(pumps, pumpId, (pump) => ({ ...pump, window })))

/** Takes a pump off the machine. Closed visits keep the set-up they were closed with. */
export const removePump = (site: Site, machineId: Id, pumpId: Id): Site =>
  withPumps(site, machineId, (pumps) => removeById(pumps, pumpId))

export const movePump = (site: Site, machineId: Id, pumpId: Id, by: -1 | 1): Site =>
  withPumps(site, machineId, (pumps) => moveById(pumps, pumpId, by))
