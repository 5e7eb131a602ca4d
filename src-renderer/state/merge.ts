import { apply, difference, type Change } from '#core/documents/changes'

/**
 * Puts the edits `base` -> `mine` on top of `theirs`. Null when both sides touched the same place in different ways:
 * then a person decides. An item added to the same end of a list by both counts as the same place.
 */
export function mergeThreeWay<T>(base: T, mine: T, theirs: T): { readonly document: T } | null {
  const ours = difference(base, mine)
  const other = difference(base, theirs)
  if (ours.some((a) => other.some((b) => overlaps(a, b) && !sameChange(a, b)))) return null
  const merged = apply(theirs, ours)
  return merged === null ? null : { document: merged.document as T }
}

const overlaps = (a: Change, b: Change): boolean => {
  const shorter = Math.min(a.path.length, b.path.length)
  return a.path.slice(0, shorter).every((step, index) => step === b.path[index])
}

const sameChange = (a: Change, b: Change): boolean =>
  difference({ ...a, path: [...a.path] }, { ...b, path: [...b.path] }).length === 0
