/** Whether two plain values (as JSON holds them) say the same, whatever the order of their keys. */
export function sameData(a: unknown, b: unknown): boolean {
  if (a === b) return true
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false
  if (Array.isArray(a) !== Array.isArray(b)) return false
  const left = Object.entries(a)
  const right = new Map(Object.entries(b))
  return left.length === right.size && left.every(([key, value]) => sameData(value, right.get(key)))
}
