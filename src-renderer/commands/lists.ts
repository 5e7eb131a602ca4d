interface Named {
  readonly id: string
}

/** The list with one item changed; the same list when no item has the id, or the change leaves it as it is. */
export function changeById<T extends Named>(
  items: readonly T[],
  id: string,
  change: (item: T) => T,
): readonly T[] {
  const index = items.findIndex((item) => item.id === id)
  const item = items[index]
  if (item === undefined) return items
  const changed = change(item)
  return changed === item ? items : items.with(index, changed)
}

/** The list without one item; the same list when no item has the id. */
export const removeById = <T extends Named>(items: readonly T[], id: string): readonly T[] =>
  items.some((item) => item.id === id) ? items.filter((item) => item.id !== id) : items

/** The list with one item a place earlier (-1) or later (+1); the same list at either end. */
export function moveById<T extends Named>(items: readonly T[], id: string, by: -1 | 1): readonly T[] {
  const from = items.findIndex((item) => item.id === id)
  const moved = items[from]
  const neighbour = items[from + by]
  if (moved === undefined || neighbour === undefined) return items
  return items.map((item, index) => (index === from ? neighbour : index === from + by ? moved : item))
}
