import type { SchemaFault } from './fault'

/**
 * Two things of one list with the same id, or two pumps of one site with the same id (work, scenarios and advice name
 * pumps without their machine). Null when every id stands for one thing.
 */
export function duplicateId(node: unknown, place = ''): SchemaFault | null {
  if (Array.isArray(node)) {
    const seen = new Set<string>()
    for (const [index, item] of node.entries()) {
      const id = idOf(item)
      const here = place === '' ? String(index) : `${place}.${index}`
      if (id !== null && seen.has(id)) return { place: `${here}.id`, reason: 'stands twice in its list' }
      if (id !== null) seen.add(id)
      const below = duplicateId(item, here)
      if (below !== null) return below
    }
    return null
  }
  if (typeof node !== 'object' || node === null) return null
  for (const [key, value] of Object.entries(node)) {
    const here = place === '' ? key : `${place}.${key}`
    const below = (key === 'machines' ? duplicatePump(value, here) : null) ?? duplicateId(value, here)
    if (below !== null) return below
  }
  return null
}

function duplicatePump(machines: unknown, place: string): SchemaFault | null {
  if (!Array.isArray(machines)) return null
  const seen = new Set<string>()
  for (const [at, machine] of machines.entries()) {
    const pumps = (machine as { readonly pumps?: unknown }).pumps
    if (!Array.isArray(pumps)) continue
    for (const [index, pump] of pumps.entries()) {
      const id = idOf(pump)
      if (id !== null && seen.has(id))
        return { place: `${place}.${at}.pumps.${index}.id`, reason: 'belongs to another pump of this site' }
      if (id !== null) seen.add(id)
    }
  }
  return null
}

const idOf = (item: unknown): string | null => {
  const id = typeof item === 'object' && item !== null ? (item as { readonly id?: unknown }).id : undefined
  return typeof id === 'string' ? id : null
}
