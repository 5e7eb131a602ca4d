import type {
  Id,
  Instrument,
  Machine,
  Product,
  Pump,
  Reading,
  Site,
  Verification,
  Visit,
  Water,
} from '#core/records/index'
import type { PumpVisit, Worksheet } from '#core/worksheet/types'

/** One pump of one visit with what its checks are held against: as it stood at closing, or as it is. */
export interface VerifiedPump {
  readonly visit: Visit
  readonly closed: boolean
  readonly machine: Machine
  readonly pump: Pump
  readonly product: Product | null
  readonly instruments: readonly Instrument[]
  readonly water: Water
  readonly readings: readonly Reading[]
  readonly checks: readonly Verification[]
  readonly result: PumpVisit | null
}

/** Null for a visit or a pump that is not there. */
export function verifiedPump(
  of: {
    readonly site: Site
    readonly products: readonly Product[]
    readonly instruments: readonly Instrument[]
    readonly worksheet: Worksheet
  },
  visitId: Id,
  pumpId: Id,
): VerifiedPump | null {
  const { site } = of
  const visit = site.visits.find((one) => one.id === visitId)
  if (visit === undefined) return null
  const setup = site.snapshots.find((one) => one.id === visit.setupId) ?? {
    machines: site.machines,
    products: of.products,
    instruments: of.instruments,
    water: site.water,
  }
  const machine = setup.machines.find((one) => one.pumps.some((pump) => pump.id === pumpId))
  const pump = machine?.pumps.find((one) => one.id === pumpId)
  if (machine === undefined || pump === undefined) return null
  return {
    visit,
    closed: visit.closing !== null,
    machine,
    pump,
    product: setup.products.find((one) => one.id === pump.productId) ?? null,
    instruments: setup.instruments,
    water: setup.water,
    readings: visit.readings.filter((reading) => reading.machineId === machine.id),
    checks: visit.work.find((one) => one.pumpId === pumpId)?.verifications ?? [],
    result:
      of.worksheet.visits
        .find((one) => one.visitId === visitId)
        ?.pumps.find((one) => one.pumpId === pumpId) ?? null,
  }
}

/** The last reading of a kind, as an entry or a plain number. */
export const lastReading = (readings: readonly Reading[], kind: Reading['kind']): Reading | null =>
  readings
    .filter((reading) => reading.kind === kind)
    .toSorted((a, b) => (a.at < b.at ? -1 : 1))
    .at(-1) ?? null
