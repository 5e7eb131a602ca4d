import type { Id, Instant, PumpWork, Site, Visit } from '#core/records/index'

/** Where an edit lands: one visit of the site. */
export interface AtVisit {
  readonly visitId: Id
}

/** Where an edit lands: one pump's work in one visit. */
export interface AtPump extends AtVisit {
  readonly pumpId: Id
}

/** Identity and moment of a new record; the caller has the clock and the ids. */
export interface Stamp {
  readonly id: Id
  readonly at: Instant
}

/**
 * Applies a change to a visit that is still open. A closed visit, an unknown one, or a change that changes nothing
 * gives the very same site back, so that undo gets no empty step.
 */
export function changeOpenVisit(site: Site, visitId: Id, change: (visit: Visit) => Visit): Site {
  const before = site.visits.find((visit) => visit.id === visitId)
  if (before === undefined || before.closing !== null) return site
  const after = change(before)
  if (after === before) return site
  return { ...site, visits: site.visits.map((visit) => (visit === before ? after : visit)) }
}

/** Applies a change to one pump's work, beginning it when nothing was done there yet. */
export function changeWork(site: Site, at: AtPump, change: (work: PumpWork) => PumpWork): Site {
  return changeOpenVisit(site, at.visitId, (visit) => {
    const before = visit.work.find((work) => work.pumpId === at.pumpId)
    const start: PumpWork = before ?? { pumpId: at.pumpId, steps: [], verifications: [] }
    const after = change(start)
    if (after === start) return visit
    const work =
      before === undefined ? [...visit.work, after] : visit.work.map((row) => (row === before ? after : row))
    return { ...visit, work }
  })
}

/** The list with one item replaced; the same list when nothing matches or nothing changes. */
export function replaceOne<T>(
  list: readonly T[],
  matches: (item: T) => boolean,
  change: (item: T) => T,
): readonly T[] {
  const before = list.find(matches)
  if (before === undefined) return list
  const after = change(before)
  return after === before ? list : list.map((item) => (item === before ? after : item))
}

/** The list without the items that match; the same list when none do. */
export function without<T>(list: readonly T[], matches: (item: T) => boolean): readonly T[] {
  return list.some(matches) ? list.filter((item) => !matches(item)) : list
}
