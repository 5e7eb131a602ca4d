import type {
  DataPlate,
  Id,
  Instant,
  Machine,
  MachineClass,
  Pump,
  RinseWater,
  Site,
  Wash,
} from '#core/records/index'
import { changeById, moveById, removeById } from '../lists'

export interface NewMachine {
  readonly id: Id
  readonly name: string
  readonly class: MachineClass
  readonly sanitizing: Machine['sanitizing']
}

const EMPTY_PLATE: DataPlate = {
  washTemperatureMin: null,
  rinseTemperatureMin: null,
  rinseTemperatureMax: null,
  rinsePressureMin: null,
  rinsePressureMax: null,
}

/** A wash with nothing known about it yet. Well mixed with continuous overflow is the ordinary case. */
export const emptyWash = (kind: Wash['kind']): Wash =>
  kind === 'tank'
    ? {
        kind,
        volume: null,
        drainAndFillsPerDay: null,
        closure: 'continuous',
        carriedOut: null,
        upstream: null,
        feeding: 'with-rinse',
      }
    : { kind, heel: null, fill: null }

/** A machine with nothing known about it but what it is. */
export const newMachine = (input: NewMachine): Machine => ({
  ...input,
  wash: emptyWash('tank'),
  rinse: null,
  boosterVolume: null,
  dataPlate: EMPTY_PLATE,
  racksPerDay: null,
  racksSpread: null,
  pumps: [],
})

const withMachines = (site: Site, machines: readonly Machine[]): Site =>
  machines === site.machines ? site : { ...site, machines }

export const changeMachine = (
  site: Site,
  id: Id,
  facts: Partial<
    Pick<Machine, 'name' | 'class' | 'sanitizing' | 'boosterVolume' | 'racksPerDay' | 'racksSpread'>
  >,
): Site =>
  withMachines(
    site,
    changeById(site.machines, id, (machine) => ({ ...machine, ...facts })),
  )

export const setRinse = (site: Site, id: Id, rinse: RinseWater | null): Site =>
  withMachines(
    site,
    changeById(site.machines, id, (machine) => ({ ...machine, rinse })),
  )

/** The pumps of a second tank that is taken away feed the wash tank from then on. */
export const setWash = (site: Site, id: Id, wash: Wash): Site =>
  withMachines(
    site,
    changeById(site.machines, id, (machine) => ({
      ...machine,
      wash,
      pumps: wash.kind === 'tank' && wash.upstream !== null ? machine.pumps : machine.pumps.map(intoWashTank),
    })),
  )

export const changeDataPlate = (site: Site, id: Id, facts: Partial<DataPlate>): Site =>
  withMachines(
    site,
    changeById(site.machines, id, (machine) => ({
      ...machine,
      dataPlate: { ...machine.dataPlate, ...facts },
    })),
  )

const intoWashTank = (pump: Pump): Pump =>
  pump.feeds === 'upstream-tank' ? { ...pump, feeds: 'wash-tank' } : pump

/** Takes a machine off the site. Closed visits keep the set-up they were closed with. */
export const removeMachine = (site: Site, id: Id): Site => withMachines(site, removeById(site.machines, id))

/**
 * Machines as somebody moved them, or with one added, from `before`: what is needed to keep that order when another
 * version of the site comes in. One that is only added stands behind the others and leaves an order set by hand alone.
 */
export function noteOrder(site: Site, before: Site, at: Instant): Site {
  if (site.machines === before.machines) return site
  const known = new Set(before.machines.map(({ id }) => id))
  const fresh = site.machines.filter(({ id }) => !known.has(id)).map(({ id }) => ({ id, at }))
  const was = before.machineOrder ?? { movedAt: null, ids: [...known], added: [] }
  const added = [...was.added, ...fresh]
  const moved = fresh.length === 0
  return {
    ...site,
    machineOrder: moved ? { movedAt: at, ids: site.machines.map(({ id }) => id), added } : { ...was, added },
  }
}

export const moveMachine = (site: Site, id: Id, by: -1 | 1): Site =>
  withMachines(site, moveById(site.machines, id, by))

/** A second machine like the first, pumps included: `nextId` gives each a fresh id. Tube dates and end stops are not copied. */
export function copyMachine(site: Site, id: Id, nextId: () => Id): Site {
  const machine = site.machines.find((candidate) => candidate.id === id)
  if (machine === undefined) return site
  const copy: Machine = {
    ...machine,
    id: nextId(),
    name: `${machine.name}, copy`,
    pumps: machine.pumps.map((pump) => ({
      ...pump,
      id: nextId(),
      tube: { ...pump.tube, fittedOn: null },
      screwStops: { up: null, down: null },
    })),
  }
  return withMachines(site, [...site.machines, copy])
}
