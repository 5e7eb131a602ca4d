type Json = Readonly<Record<string, unknown>>

/**
 * Site file, version 1 to 2: a wash tank may have a second one that overflows into it, and be fed all at once. Until then
 * no machine had one, and every dose was taken to come with the rinse.
 * Set-ups kept for closed visits are taken along. What is no machine is passed on as it is, for the schema to name.
 */
export function siteWithSecondTank(document: Json): Json {
  const { site } = document
  if (!isGroup(site)) return document
  return {
    ...document,
    site: {
      ...site,
      ...inList(site, 'machines', machine),
      ...inList(site, 'snapshots', (snapshot) => ({ ...snapshot, ...inList(snapshot, 'machines', machine) })),
    },
  }
}

const machine = (old: Json): Json =>
  isGroup(old['wash']) && old['wash']['kind'] === 'tank'
    ? { ...old, wash: { ...old['wash'], upstream: null, feeding: 'with-rinse' } }
    : old

function inList(of: Json, key: string, change: (item: Json) => Json): Json {
  const list = of[key]
  return Array.isArray(list)
    ? { [key]: list.map((item: unknown) => (isGroup(item) ? change(item) : item)) }
    : {}
}

const isGroup = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
