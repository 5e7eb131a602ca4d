/** Work put off until it is asked for, and done once. */
export function once<T>(work: () => T): () => T {
  let done: { readonly value: T } | null = null
  return () => (done ??= { value: work() }).value
}

/**
 * Work done once for each record, as long as the record lives. Records never change: an edit makes a new one. So what
 * follows from a record alone is known by its identity.
 */
export function oncePer<K extends object, T extends object | null>(work: (record: K) => T): (record: K) => T {
  const known = new WeakMap<K, T>()
  return (record) => {
    const before = known.get(record)
    if (before !== undefined) return before
    const value = work(record)
    known.set(record, value)
    return value
  }
}

/**
 * The same for a record looked at in company: only the company it was last seen in is remembered, and it is the same
 * company when every part of it is the same record.
 */
export function oncePerCompany<K extends object, C extends object, T>(
  work: (record: K, company: C) => T,
): (record: K, company: C) => T {
  const known = new WeakMap<K, { readonly company: C; readonly value: T }>()
  return (record, company) => {
    const before = known.get(record)
    if (before !== undefined && haveSameParts(before.company, company)) return before.value
    const value = work(record, company)
    known.set(record, { company, value })
    return value
  }
}

function haveSameParts<C extends object>(a: C, b: C): boolean {
  const parts = Object.keys(a) as (keyof C)[]
  return parts.length === Object.keys(b).length && parts.every((part) => a[part] === b[part])
}
