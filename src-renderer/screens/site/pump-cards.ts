import type { Id, Machine, Product, Pump, Site } from '#core/records/index'
import type { PumpUse, PumpVisit, VisitResult, Worksheet } from '#core/worksheet/types'

/** One pump as the site page shows it: what it is, and where the last visit that tested it left it. */
export interface PumpCardFacts {
  readonly pump: Pump
  readonly product: Product | null
  readonly last: { readonly visit: VisitResult; readonly found: PumpVisit } | null
  readonly use: PumpUse | null
}

export interface MachineFacts {
  readonly machine: Machine
  readonly pumps: readonly PumpCardFacts[]
}

/** All pumps of the site with the last closed visit that tested each. */
export function machineFacts(
  site: Site,
  worksheet: Worksheet,
  products: readonly Product[],
): readonly MachineFacts[] {
  const closed = worksheet.visits.filter((visit) => visit.closed)
  return site.machines.map((machine) => ({
    machine,
    pumps: machine.pumps.map((pump) => ({
      pump,
      product: products.find((product) => product.id === pump.productId) ?? null,
      last: lastTested(closed, pump.id),
      use: worksheet.use.find((line) => line.pumpId === pump.id) ?? null,
    })),
  }))
}

function lastTested(visits: readonly VisitResult[], pumpId: Id): PumpCardFacts['last'] {
  for (const visit of visits.toReversed()) {
    const found = visit.pumps.find((pump) => pump.pumpId === pumpId)
    if (found !== undefined && found.asLeft !== null) return { visit, found }
  }
  return null
}
