import type { Machine, MachineOrder, Site } from '../records'
import { canonicalText, same } from './same'

type Ordered = Pick<Site, 'machines' | 'machineOrder'>

/**
 * What two versions know of the order, together: the later move, and every addition with its earliest moment. The same
 * whoever starts, in whatever order several meet, however often.
 */
export function mergeOrders(
  a: MachineOrder | undefined,
  b: MachineOrder | undefined,
): MachineOrder | undefined {
  if (a === undefined || b === undefined || same(a, b)) return a ?? b
  const { movedAt, ids } = later(a, b)
  const added = new Map<string, string>()
  for (const { id, at } of [...a.added, ...b.added]) {
    const known = added.get(id)
    if (known === undefined || at < known) added.set(id, at)
  }
  return {
    movedAt,
    ids,
    added: [...added]
      .map(([id, at]) => ({ id, at }))
      .toSorted((x, y) => (`${x.at} ${x.id}` < `${y.at} ${y.id}` ? -1 : 1)),
  }
}

const moved = ({ movedAt, ids }: MachineOrder): string => `${movedAt ?? ''} ${canonicalText(ids)}`

const later = (a: MachineOrder, b: MachineOrder): MachineOrder => (moved(a) >= moved(b) ? a : b)

/** The machines as a move last left them, then those added since, the earliest first; what nothing is known of by id. */
export function inOrder(machines: readonly Machine[], order: MachineOrder | undefined): readonly Machine[] {
  const place = new Map(order?.ids.map((id, index) => [id, index]))
  const added = new Map(order?.added.map(({ id, at }) => [id, at]))
  return machines.toSorted((x, y) => {
    const [px, py] = [place.get(x.id) ?? Infinity, place.get(y.id) ?? Infinity]
    if (px !== py) return px - py
    const [kx, ky] = [x, y].map(({ id }) => `${added.get(id) ?? ''} ${id}`) as [string, string]
    return kx < ky ? -1 : 1
  })
}

/** Whether two versions have the same machines in the same places, and know the same of their order. */
export const agreeOnOrder = (a: Ordered, b: Ordered): boolean =>
  a.machines.length === b.machines.length &&
  a.machines.every(({ id }, index) => id === b.machines[index]?.id) &&
  same(a.machineOrder ?? null, b.machineOrder ?? null)
