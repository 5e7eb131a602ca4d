import type { SchemaFault } from './fault'

/**
 * Two things of one list with the same id, or two pumps of one site with the same id (work, scenarios and advice name
 * pumps without their machine). Null when every id stands for one thing.
 */
export function duplicateId(node: unknown): SchemaFault | null {
  const found = search(node)
  return found === null ? null : { place: found.path.toReversed().join('.'), reason: found.reason }
}

/** The path is put together on the way back, innermost first: nearly always there is nothing to tell. */
interface Found {
  readonly path: (string | number)[]
  readonly reason: string
}

function search(node: unknown): Found | null {
  if (typeof node !== 'object' || node === null) return null
  if (Array.isArray(node)) return searchList(node)
  for (const key in node) {
    const value = (node as Readonly<Record<string, unknown>>)[key]
    if (typeof value !== 'object') continue
    const found = (key === 'machines' ? duplicatePump(value) : null) ?? search(value)
    if (found !== null) return under(found, key)
  }
  return null
}

function searchList(list: readonly unknown[]): Found | null {
  const seen = new Set<string>()
  for (let index = 0; index < list.length; index += 1) {
    const item = list[index]
    const id = idOf(item)
    if (id !== null && seen.has(id)) return { path: ['id', index], reason: 'stands twice in its list' }
    if (id !== null) seen.add(id)
    const found = search(item)
    if (found !== null) return under(found, index)
  }
  return null
}

function duplicatePump(machines: unknown): Found | null {
  if (!Array.isArray(machines)) return null
  const seen = new Set<string>()
  for (const [at, machine] of machines.entries()) {
    const pumps = (machine as { readonly pumps?: unknown }).pumps
    if (!Array.isArray(pumps)) continue
    for (const [index, pump] of pumps.entries()) {
      const id = idOf(pump)
      if (id !== null && seen.has(id))
        return { path: ['id', index, 'pumps', at], reason: 'belongs to another pump of this site' }
      if (id !== null) seen.add(id)
    }
  }
  return null
}

function under(found: Found, step: string | number): Found {
  found.path.push(step)
  return found
}

const idOf = (item: unknown): string | null => {
  const id = typeof item === 'object' && item !== null ? (item as { readonly id?: unknown }).id : undefined
  return typeof id === 'string' ? id : null
}
