/**
 * An edit as it travels: set or take away one place of a document. A list is changed item by item while its length
 * stays or grows at the end; any other change of a list replaces the list.
 */
export type Change =
  | { readonly op: 'set'; readonly path: readonly (string | number)[]; readonly value: unknown }
  | { readonly op: 'remove'; readonly path: readonly (string | number)[] }

type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json }

/** The changes that turn `before` into `after`; none when they are equal. Both must be plain JSON. */
export function difference(before: unknown, after: unknown): readonly Change[] {
  const changes: Change[] = []
  walk(before as Json, after as Json, [], changes)
  return changes
}

function walk(before: Json, after: Json, path: readonly (string | number)[], changes: Change[]): void {
  if (before === after) return
  if (isList(before) && isList(after) && after.length >= before.length) {
    before.forEach((item, index) => walk(item, after[index] as Json, [...path, index], changes))
    for (let index = before.length; index < after.length; index += 1)
      changes.push({ op: 'set', path: [...path, index], value: after[index] })
    return
  }
  if (isRecord(before) && isRecord(after)) {
    for (const key of Object.keys(before))
      if (!Object.hasOwn(after, key)) changes.push({ op: 'remove', path: [...path, key] })
    for (const key of Object.keys(after)) {
      if (!Object.hasOwn(before, key)) changes.push({ op: 'set', path: [...path, key], value: after[key] })
      else walk(before[key] as Json, after[key] as Json, [...path, key], changes)
    }
    return
  }
  if (isList(before) && isList(after) && before.length === 0 && after.length === 0) return
  changes.push({ op: 'set', path, value: after })
}

/**
 * Applies changes in order and returns the new document; `before` is untouched and shares what did not change.
 * Null when a path does not fit the document, or names a prototype member.
 */
export function apply(before: unknown, changes: readonly Change[]): { readonly document: unknown } | null {
  let document = before
  for (const change of changes) {
    const next = place(document, change.path, change)
    if (next === null) return null
    document = next.document
  }
  return { document }
}

const FORBIDDEN = new Set(['__proto__', 'constructor', 'prototype'])

function place(
  node: unknown,
  path: readonly (string | number)[],
  change: Change,
): { readonly document: unknown } | null {
  const [head, ...rest] = path
  if (head === undefined) return change.op === 'set' ? { document: change.value } : null
  if (Array.isArray(node)) {
    if (typeof head !== 'number' || !Number.isInteger(head) || head < 0 || head > node.length) return null
    if (change.op === 'remove' && rest.length === 0) return null
    if (head === node.length && rest.length > 0) return null
    const next = place(node[head], rest, change)
    if (next === null) return null
    const copy = node.slice()
    copy[head] = next.document
    return { document: copy }
  }
  if (typeof node !== 'object' || node === null) return null
  if (typeof head !== 'string' || FORBIDDEN.has(head)) return null
  const record = node as Record<string, unknown>
  if (change.op === 'remove' && rest.length === 0) {
    if (!Object.hasOwn(record, head)) return null
    const { [head]: _gone, ...kept } = record
    return { document: kept }
  }
  if (rest.length > 0 && !Object.hasOwn(record, head)) return null
  const next = place(record[head], rest, change)
  return next === null ? null : { document: { ...record, [head]: next.document } }
}

const isList = (value: Json): value is readonly Json[] => Array.isArray(value)
const isRecord = (value: Json): value is { readonly [key: string]: Json } =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
