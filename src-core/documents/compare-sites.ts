import type { Site, Visit } from '../records'
import { difference } from './changes'
import { same } from './same'

export interface SitePart {
  /** dotted path, as in problems */
  readonly place: string
  readonly what:
    | 'site'
    | 'water'
    | 'calendar'
    | 'machine'
    | 'open-visit'
    | 'visit'
    | 'stock'
    | 'glass-check'
    | 'what-if'
    | 'kept-set-up'
  readonly name: string
  readonly state: 'only-mine' | 'only-theirs' | 'differs'
  /** the first places inside the part that differ, as dotted paths; empty where the part is one value or on one side only */
  readonly changed: readonly string[]
  /** whether bringing the two together needs an answer for it */
  readonly asks: boolean
}

/** Every part in which two versions of a site differ, and which of them a merge has to ask about. */
export function compareSites(mine: Site, theirs: Site): readonly SitePart[] {
  const facts = (['name', 'currency', 'units', 'timeZone', 'notes', 'visitEveryDays'] as const)
    .filter((key) => !same(mine[key], theirs[key]))
    .map((key) => differs(key, 'site', key))
  const blocks = (['calendar', 'water'] as const)
    .filter((key) => !same(mine[key], theirs[key]))
    .map((key) => differs(key, key, key, changedIn(mine[key], theirs[key])))
  return [
    ...facts,
    ...blocks,
    // the later order holds, so nobody is asked
    ...(same(mine.machineOrder ?? null, theirs.machineOrder ?? null)
      ? []
      : [{ ...differs('machineOrder', 'site', 'order of the machines'), asks: false }]),
    ...lists('machines', 'machine', mine.machines, theirs.machines, (item) => item.name),
    ...visits(mine.visits, theirs.visits),
    ...lists('stock', 'stock', mine.stock, theirs.stock, (item) => item.on),
    ...lists('glassChecks', 'glass-check', mine.glassChecks, theirs.glassChecks, (item) =>
      item.at.slice(0, 10),
    ),
    ...lists('scenarios', 'what-if', mine.scenarios, theirs.scenarios, (item) => item.name),
    ...lists('snapshots', 'kept-set-up', mine.snapshots, theirs.snapshots, (item) => item.at.slice(0, 10)),
  ]
}

const differs = (
  place: string,
  what: SitePart['what'],
  name: string,
  changed: readonly string[] = [],
): SitePart => ({ place, what, name, state: 'differs', changed, asks: true })

const MOST_NAMED = 4

/** Where two versions of one thing differ; more than a few are cut to the first, and `...` says so. */
function changedIn(mine: unknown, theirs: unknown): readonly string[] {
  const places = [...new Set(difference(mine, theirs).map(({ path }) => path.join('.')))].filter(
    (place) => place !== '',
  )
  return places.length > MOST_NAMED ? [...places.slice(0, MOST_NAMED), '...'] : places
}

function lists<T extends { readonly id: string }>(
  place: string,
  what: SitePart['what'],
  mine: readonly T[],
  theirs: readonly T[],
  nameOf: (item: T) => string,
): readonly SitePart[] {
  const others = new Map(theirs.map((item) => [item.id, item]))
  const own = new Set(mine.map((item) => item.id))
  const part = (item: T, state: SitePart['state'], changed: readonly string[] = []): SitePart => ({
    place: `${place}.${item.id}`,
    what,
    name: nameOf(item),
    state,
    changed,
    asks: state === 'differs',
  })
  return [
    ...mine.flatMap((item) => {
      const other = others.get(item.id)
      if (other === undefined) return [part(item, 'only-mine')]
      return same(item, other) ? [] : [part(item, 'differs', changedIn(item, other))]
    }),
    ...theirs.filter((item) => !own.has(item.id)).map((item) => part(item, 'only-theirs')),
  ]
}

/** Two open versions of a visit, or two closed ones with different words, ask; a closed one settles an open one. */
function visits(mine: readonly Visit[], theirs: readonly Visit[]): readonly SitePart[] {
  const byId = new Map([...theirs, ...mine].map((visit) => [visit.id, visit]))
  const otherById = new Map(theirs.map((visit) => [visit.id, visit]))
  return lists('visits', 'visit', mine, theirs, (visit) => visit.startedAt.slice(0, 10)).map((part) => {
    const visit = byId.get(part.place.slice('visits.'.length))
    const other = visit === undefined ? undefined : otherById.get(visit.id)
    if (visit === undefined || other === undefined || part.state !== 'differs')
      return visit?.closing === null ? { ...part, what: 'open-visit' } : part
    if (visit.closing === null && other.closing === null) return { ...part, what: 'open-visit' }
    if (visit.closing === null || other.closing === null) return { ...part, asks: false }
    return { ...part, asks: !same({ ...visit, amendments: [] }, { ...other, amendments: [] }) }
  })
}
