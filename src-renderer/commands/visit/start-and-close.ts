import type {
  Closing,
  Day,
  Id,
  Instant,
  Instrument,
  Machine,
  Product,
  Pump,
  SetupSnapshot,
  Site,
  Visit,
} from '#core/records/index'
import { changeOpenVisit, without, type AtVisit, type Stamp } from './open-visit'
import { sameData } from './same-data'

/** The visit of this site that is still open, if any. A site has at most one. */
export const openVisitOf = (site: Site): Visit | undefined =>
  site.visits.find((visit) => visit.closing === null)

/** Begins a visit. While another is open the site stays as it is: that one is resumed instead. */
export function startVisit(site: Site, input: Stamp & { readonly by: string }): Site {
  if (openVisitOf(site) !== undefined) return site
  const visit: Visit = {
    id: input.id,
    startedAt: input.at,
    by: input.by,
    checks: [],
    readings: [],
    work: [],
    cautions: [],
    advice: [],
    notes: '',
    closing: null,
    setupId: null,
    amendments: [],
  }
  return { ...site, visits: [...site.visits, visit] }
}

/** Takes an open visit away whole. A closed one stays. */
export function discardVisit(site: Site, at: AtVisit): Site {
  const visits = without(site.visits, (visit) => visit.id === at.visitId && visit.closing === null)
  return visits === site.visits ? site : { ...site, visits }
}

export interface CloseInput extends AtVisit, Closing {
  /** id for a new set-up snapshot, used only when no earlier one is the same */
  readonly snapshotId: Id
  readonly products: readonly Product[]
  readonly instruments: readonly Instrument[]
  /** the calendar day of an instant at the site */
  readonly dayOf: (instant: Instant) => Day
}

/**
 * Closes a visit for good and ties it to the set-up its results are computed with for ever: an earlier snapshot when
 * the set-up has not changed since, else a new one. Tubes that were fitted are on record as fitted that day from then on.
 */
export function closeVisit(site: Site, input: CloseInput): Site {
  const snapshot = snapshotOf(site, input)
  const known = site.snapshots.find((other) => sameSetup(other, snapshot))
  const closed = changeOpenVisit(site, input.visitId, (visit) => ({
    ...visit,
    closing: {
      at: input.at,
      nextVisitOn: input.nextVisitOn,
      customerName: input.customerName.trim(),
      signedBy: input.signedBy.trim(),
    },
    setupId: (known ?? snapshot).id,
  }))
  if (closed === site) return site
  const snapshots = known === undefined ? [...closed.snapshots, snapshot] : closed.snapshots
  return { ...closed, snapshots, machines: machinesAfter(site, input) }
}

/** The set-up goes on with the tubes that were fitted; the closed visit keeps the one it was made with. */
function machinesAfter({ machines, visits }: Site, { visitId, dayOf }: CloseInput): readonly Machine[] {
  const work = visits.find((visit) => visit.id === visitId)?.work ?? []
  const fitted = new Map<Id, Day>()
  for (const { pumpId, steps } of work)
    for (const step of steps) if (step.kind === 'tube-fitted') fitted.set(pumpId, dayOf(step.at))
  if (fitted.size === 0) return machines
  const after = (pump: Pump): Pump => {
    const day = fitted.get(pump.id)
    if (day === undefined || (pump.tube.fittedOn ?? '') >= day) return pump
    return { ...pump, tube: { ...pump.tube, fittedOn: day } }
  }
  return machines.map((machine) => ({ ...machine, pumps: machine.pumps.map(after) }))
}

export interface AmendInput extends AtVisit, Stamp {
  readonly by: string
  readonly reason: string
  readonly text: string
}

/** Adds a dated correction, with its reason, to a closed visit. The visit itself stays as it was. */
export function amendVisit(site: Site, input: AmendInput): Site {
  const reason = input.reason.trim()
  const text = input.text.trim()
  const visit = site.visits.find((one) => one.id === input.visitId)
  if (visit === undefined || visit.closing === null || reason === '' || text === '') return site
  const amendment = { id: input.id, at: input.at, by: input.by, reason, text }
  const amended: Visit = { ...visit, amendments: [...visit.amendments, amendment] }
  return { ...site, visits: site.visits.map((one) => (one === visit ? amended : one)) }
}

function snapshotOf(site: Site, input: CloseInput): SetupSnapshot {
  const products = new Set(site.machines.flatMap((machine) => machine.pumps.map((pump) => pump.productId)))
  const instruments = instrumentsUsed(site)
  return {
    id: input.snapshotId,
    at: input.at,
    machines: site.machines,
    water: site.water,
    products: input.products.filter((product) => products.has(product.id)),
    instruments: input.instruments.filter((instrument) => instruments.has(instrument.id)),
  }
}

/** Of all visits, not of this one alone: otherwise each other cylinder would make a new snapshot. */
function instrumentsUsed(site: Site): ReadonlySet<Id> {
  const work = site.visits.flatMap((visit) => visit.work)
  const ofTests = work.flatMap((row) =>
    row.steps.flatMap((step) => (step.kind === 'test' ? [step.instrumentId] : [])),
  )
  const ofChecks = work.flatMap((row) => row.verifications.map((check) => check.instrumentId))
  return new Set([...ofTests, ...ofChecks].filter((id): id is Id => id !== null))
}

const contents = ({ machines, water, products, instruments }: SetupSnapshot) => ({
  machines,
  water,
  products,
  instruments,
})

const sameSetup = (a: SetupSnapshot, b: SetupSnapshot): boolean => sameData(contents(a), contents(b))
