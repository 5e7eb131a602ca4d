import type { Settings, Site, Visit } from '../records'
import type { PumpPast } from './pump-past'
import { pumpVisit } from './pump-visit'
import type { Setup } from './setup-of'
import type { PumpVisit } from './types'

/** A closed visit cannot change, nor can its set-up: what was worked out once is kept as long as both live. */
const kept = new WeakMap<Visit, { readonly setup: Setup; readonly pumps: readonly PumpVisit[] }>()

/** Every pump of a visit that is closed. The settings of the day have no part in it. */
export function closedVisitPumps(site: Site, visit: Visit, setup: Setup): readonly PumpVisit[] {
  const known = kept.get(visit)
  if (known !== undefined && isSame(known.setup, setup)) return known.pumps
  const pumps = visitPumps({ site, visit, setup, settings: null, pasts: () => [] })
  kept.set(visit, { setup, pumps })
  return pumps
}

/** A visit whose set-up was lost borrows today's, which is put together anew every time. */
const isSame = (a: Setup, b: Setup): boolean =>
  a === b ||
  (a.machines === b.machines &&
    a.products === b.products &&
    a.instruments === b.instruments &&
    a.water === b.water)

/** Every pump of a visit, machine by machine. */
export const visitPumps = (input: {
  readonly site: Site
  readonly visit: Visit
  readonly setup: Setup
  readonly settings: Settings | null
  readonly pasts: () => readonly PumpPast[]
}): readonly PumpVisit[] =>
  input.setup.machines.flatMap((machine) =>
    machine.pumps.map((pump) => pumpVisit({ ...input, machine, pump })),
  )
