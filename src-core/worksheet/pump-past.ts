import type { Id, Machine, Pump, Visit } from '../records'
import type { GainSegment } from '../screw/gain-prior'
import { observationOf } from '../screw/observation-of'
import { positions } from '../screw/positions'
import { countedRuns } from './counted-runs'
import type { PumpVisit } from './types'

/** What earlier visits taught about one pump's screw, and what the last of them left. */
export interface PumpPast {
  readonly pumpId: Id
  readonly segments: readonly GainSegment[]
  readonly left: { readonly flow: number; readonly expanded: number } | null
  /** a turn is on record, so that the screw was last moved clockwise as far as anybody wrote down */
  readonly turned: boolean
}

/** One visit's tests of one pump, tube by tube. */
function segmentsOf(visit: Visit, pump: PumpVisit): readonly GainSegment[] {
  const work = visit.work.find((one) => one.pumpId === pump.pumpId)
  if (work === undefined) return []
  const { tubes } = positions(work.steps)
  return tubes.map((ids, index) => ({
    observations: pump.tests.flatMap((test) =>
      ids.includes(test.testId) && test.flow.ok
        ? [observationOf(test.eighths, test.flow.value, countedRuns(test))]
        : [],
    ),
    tubeChangedAfter: index < tubes.length - 1,
  }))
}

/** By the worked pumps of a closed visit, which keep their identity. */
const kept = new WeakMap<readonly PumpVisit[], ReadonlyMap<Id, readonly GainSegment[]>>()

function segmentsByPump(visit: Visit, pumps: readonly PumpVisit[]): ReadonlyMap<Id, readonly GainSegment[]> {
  const known = kept.get(pumps)
  if (known !== undefined) return known
  const made = new Map(pumps.map((pump) => [pump.pumpId, segmentsOf(visit, pump)] as const))
  kept.set(pumps, made)
  return made
}

const hasTurn = (visit: Visit, pumpId: Id): boolean =>
  visit.work.some(
    (work) => work.pumpId === pumpId && work.steps.some((step) => step.kind === 'turn' && step.eighths !== 0),
  )

/** The past of every pump over closed visits, oldest first. */
export function pumpPasts(
  visits: readonly { readonly visit: Visit; readonly pumps: readonly PumpVisit[] }[],
): readonly PumpPast[] {
  const pasts = new Map<Id, { segments: GainSegment[]; left: PumpPast['left']; turned: boolean }>()
  for (const { visit, pumps } of visits) {
    for (const [pumpId, segments] of segmentsByPump(visit, pumps)) {
      const past = pasts.get(pumpId) ?? { segments: [], left: null, turned: false }
      past.segments.push(...segments)
      past.turned ||= hasTurn(visit, pumpId)
      pasts.set(pumpId, past)
    }
    for (const pump of pumps) {
      const past = pasts.get(pump.pumpId)
      if (past !== undefined && pump.asLeft?.flow.ok === true)
        past.left = { flow: pump.asLeft.flow.value.value, expanded: pump.asLeft.flow.value.expanded }
    }
  }
  return [...pasts].map(([pumpId, past]) => ({ pumpId, ...past }))
}

/** The pasts of the site's other pumps that the rep calls by the same kind. */
export const sameKindPasts = (
  pump: Pump,
  machines: readonly Machine[],
  pasts: readonly PumpPast[],
): readonly (readonly GainSegment[])[] =>
  pump.kind === ''
    ? []
    : machines
        .flatMap((machine) => machine.pumps)
        .filter((other) => other.id !== pump.id && other.kind === pump.kind)
        .flatMap((other) => {
          const past = pasts.find((one) => one.pumpId === other.id)
          return past === undefined ? [] : [past.segments]
        })
