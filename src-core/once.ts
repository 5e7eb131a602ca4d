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

/** The same for a record looked at in company: only the company it was last seen in is remembered. */
export function oncePerCompany<K extends object, C extends readonly unknown[], T>(
  work: (record: K, ...company: C) => T,
): (record: K, ...company: C) => T {
  const known = new WeakMap<K, { readonly company: C; readonly value: T }>()
  return (record, ...company) => {
    const before = known.get(record)
    if (before !== undefined && before.company.every((one, i) => one === company[i])) return before.value
    const value = work(record, ...company)
    known.set(record, { company, value })
    return value
  }
}
