import { once } from '../once'
import type { Outcome } from '../outcome'
import type { Id, Site, Visit } from '../records'
import { pumpSaving } from '../spend/saving'
import type { Span } from '../spend/span'
import type { PumpSaving, RackRate } from '../spend/types'
import { setPointsOf } from './set-points'
import { pumpIn, type Setup } from './setup-of'
import type { PumpVisit, VisitResult } from './types'

export interface VisitInput {
  readonly site: Site
  readonly visit: Visit
  readonly setup: () => Setup
  readonly pumps: () => readonly PumpVisit[]
  /** the average month, and each machine's racks, as they stand today */
  readonly month: Span
  readonly racksOf: (machineId: Id) => Outcome<RackRate>
}

/**
 * One visit: its pumps, how many are in the window, and what its adjustments changed; each worked out when it is first
 * read, because most visits of a history are never looked at.
 */
export function visitResult(input: VisitInput): VisitResult {
  const { visit, pumps } = input
  const saving = once(() => pumps().flatMap((pump) => savingOf(pump, input)))
  const setPoints = once(() => setPointsOf(input.site, visit, input.setup()))
  return {
    visitId: visit.id,
    startedAt: visit.startedAt,
    closed: visit.closing !== null,
    get pumps() {
      return pumps()
    },
    get inWindow() {
      return pumps().filter((pump) => pump.state === 'proved-in' || pump.state === 'in-not-proved').length
    },
    get tested() {
      return pumps().filter((pump) => pump.asFound !== null).length
    },
    get saving() {
      return saving()
    },
    get setPoints() {
      return setPoints()
    },
  }
}

/** As found against as left, for a pump whose flow was changed in this visit: by a turn, or by a new tube. */
function savingOf(pump: PumpVisit, input: VisitInput): readonly PumpSaving[] {
  const { asFound, asLeft } = pump
  const setup = input.setup()
  const place = pumpIn(setup, pump.pumpId)
  if (asFound === null || asLeft === null || asFound.testId === asLeft.testId || place === null) return []
  const steps = input.visit.work.find((work) => work.pumpId === pump.pumpId)?.steps ?? []
  const changed = steps.some(
    (step) => (step.kind === 'turn' && step.eighths !== 0) || step.kind === 'tube-fitted',
  )
  if (!changed) return []
  const instrumentOf = (testId: Id): Id | null => {
    const test = steps.find((step) => step.id === testId)
    return test?.kind === 'test' ? test.instrumentId : null
  }
  return [
    pumpSaving({
      pump: place.pump,
      machine: place.machine,
      product: setup.products.find((product) => product.id === place.pump.productId) ?? null,
      currency: input.site.currency,
      day: input.visit.startedAt.slice(0, 10),
      span: input.month,
      racks: input.racksOf(place.machine.id),
      found: asFound.dose,
      left: asLeft.dose,
      sameInstrument: instrumentOf(asFound.testId) === instrumentOf(asLeft.testId),
    }),
  ]
}
