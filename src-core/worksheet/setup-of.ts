import type { Id, Instrument, Machine, Product, Pump, Site, Visit, Water } from '../records'

/** What a visit is worked out with. */
export interface Setup {
  readonly machines: readonly Machine[]
  readonly products: readonly Product[]
  readonly instruments: readonly Instrument[]
  readonly water: Water
}

export interface Library {
  readonly products: readonly Product[]
  readonly instruments: readonly Instrument[]
}

/** The set-up a closed visit was closed with; the live one for an open visit, or where the snapshot is lost. */
export function setupOf(site: Site, visit: Visit, library: Library): Setup {
  const kept = visit.setupId === null ? undefined : site.snapshots.find((one) => one.id === visit.setupId)
  return kept ?? { machines: site.machines, water: site.water, ...library }
}

/** The machine and pump of an id, within a set-up. */
export function pumpIn(
  setup: Pick<Setup, 'machines'>,
  pumpId: Id,
): { readonly machine: Machine; readonly pump: Pump } | null {
  for (const machine of setup.machines)
    for (const pump of machine.pumps) if (pump.id === pumpId) return { machine, pump }
  return null
}
