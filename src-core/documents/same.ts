/** A text that is equal for equal JSON values whatever order their parts stand in. */
export function canonicalText(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalText).join(',')}]`
  if (typeof value !== 'object' || value === null) return JSON.stringify(value)
  const parts = Object.entries(value)
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, part]) => `${JSON.stringify(key)}:${canonicalText(part)}`)
  return `{${parts.join(',')}}`
}

/** Whether two plain JSON values hold the same. */
export const same = (a: unknown, b: unknown): boolean => a === b || canonicalText(a) === canonicalText(b)
