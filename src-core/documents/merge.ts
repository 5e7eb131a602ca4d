import type { Amendment, Site, Visit } from '../records'
import { agreeOnOrder, inOrder, mergeOrders } from './machine-order'
import { canonicalText, same } from './same'

/**
 * Brings two versions of one site together. What has an id is kept from both sides, so no visit, amendment or count is
 * lost. A closed visit stands above the same visit still open. Where both sides hold a different version of one thing
 * (set-up, open visit), `pick` decides; with `byContent` the result does not depend on the order or grouping of the
 * merges: mergeSites is then commutative, associative and idempotent, so that any number of copies passed around in any
 * order end as the same site. Nothing here knows about removing: a thing removed on one side comes back from the other.
 */
export function mergeSites(a: Site, b: Site, pick: Pick = byContent): Site {
  const field = <K extends keyof Site>(key: K): Site[K] => choose(a[key], b[key], pick)
  const machines = mergeById(a.machines, b.machines, pick)
  const machineOrder = mergeOrders(a.machineOrder, b.machineOrder)
  return {
    id: a.id,
    name: field('name'),
    currency: field('currency'),
    units: field('units'),
    timeZone: field('timeZone'),
    notes: field('notes'),
    visitEveryDays: field('visitEveryDays'),
    calendar: field('calendar'),
    water: field('water'),
    machines: agreeOnOrder(a, b) ? machines : inOrder(machines, machineOrder),
    visits: mergeById(a.visits, b.visits, (x, y) => mergeVisits(x, y, pick), startOf),
    stock: mergeById(a.stock, b.stock, pick, (item) => item.on),
    snapshots: mergeById(a.snapshots, b.snapshots, pick, (item) => item.at),
    scenarios: mergeById(a.scenarios, b.scenarios, pick),
    glassChecks: mergeById(a.glassChecks, b.glassChecks, pick, (item) => item.at),
    ...(machineOrder === undefined ? {} : { machineOrder }),
  }
}

/** Which of two different versions of one thing to keep. */
export type Pick = <T>(a: T, b: T) => T

/** Arbitrary but the same everywhere: the version whose text sorts last. */
export const byContent: Pick = (a, b) => (canonicalText(a) >= canonicalText(b) ? a : b)
export const first: Pick = (a) => a
export const second: Pick = (_a, b) => b

const choose = <T>(a: T, b: T, pick: Pick): T => (same(a, b) ? a : pick(a, b))

const startOf = (visit: Visit): string => visit.startedAt

function mergeVisits(a: Visit, b: Visit, pick: Pick): Visit {
  if (a.closing === null && b.closing === null) return choose(a, b, pick)
  if (a.closing === null) return b
  if (b.closing === null) return a
  const core = choose({ ...a, amendments: [] }, { ...b, amendments: [] }, pick)
  return { ...core, amendments: mergeById(a.amendments, b.amendments, pick, (item: Amendment) => item.at) }
}

/**
 * All items of both lists. Lists with the same items in the same places of `order` stay as they are; otherwise the list
 * is put in order by `order` and id, which is the same whoever merges first.
 */
export function mergeById<T extends { readonly id: string }>(
  a: readonly T[],
  b: readonly T[],
  join: (a: T, b: T) => T,
  order: (item: T) => string = () => '',
): readonly T[] {
  const others = new Map(b.map((item) => [item.id, item]))
  const joined = a.map((item) => {
    const other = others.get(item.id)
    return other === undefined || same(item, other) ? item : join(item, other)
  })
  const key = (item: T): string => `${order(item)} ${item.id}`
  const keys = b.map(key)
  // where one of two versions stands elsewhere in `order`, the list as it is would depend on who met whom first
  if (a.length === b.length && a.every((item, index) => key(item) === keys[index])) return joined
  const mine = new Set(a.map((item) => item.id))
  return [...joined, ...b.filter((item) => !mine.has(item.id))].toSorted((x, y) => (key(x) < key(y) ? -1 : 1))
}
