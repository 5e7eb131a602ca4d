import { fail, ok, type Outcome } from '../outcome'
import type { Site, Visit } from '../records'
import { same } from './same'

/**
 * Whether an edit leaves closed visits alone: each is still there, with the same words, times and readings, with the
 * set-up it was closed with, and its amendments only grew at the end. The first that was touched is the problem.
 */
export function closedVisitsKept(before: Site, after: Site): Outcome<Site> {
  const visits = new Map(after.visits.map((visit) => [visit.id, visit]))
  const setups = new Map(after.snapshots.map((setup) => [setup.id, setup]))
  for (const visit of before.visits) {
    if (visit.closing === null) continue
    const now = visits.get(visit.id)
    const setup = before.snapshots.find(({ id }) => id === visit.setupId)
    const setupKept = setup === undefined || same(setup, setups.get(setup.id) ?? null)
    if (now === undefined || !setupKept || !onlyAmended(visit, now))
      return fail({ code: 'visit-closed', visitId: visit.id })
  }
  return ok(after)
}

function onlyAmended(before: Visit, after: Visit): boolean {
  if (before === after) return true
  const earlier = after.amendments.slice(0, before.amendments.length)
  return same(before.amendments, earlier) && same({ ...before, amendments: [] }, { ...after, amendments: [] })
}
