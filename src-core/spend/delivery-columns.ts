import { DELIVERY_FIELDS, type DeliveryColumns, type DeliveryField } from './delivery-types'

/** Headings in common use on delivery notes and lists, in lower case. Common practice, no source. */
const WORDS: { readonly [F in DeliveryField]: readonly string[] } = {
  date: ['date', 'day', 'delivered', 'delivered on', 'delivery date', 'datum', 'fecha', 'data'],
  product: ['product', 'item', 'description', 'article', 'name', 'produkt', 'produit', 'producto'],
  containers: [
    'containers',
    'quantity',
    'qty',
    'number',
    'count',
    'pieces',
    'units',
    'anzahl',
    'menge',
    'gebinde',
    'cantidad',
  ],
  size: [
    'container size',
    'size',
    'pack',
    'pack size',
    'volume',
    'litres',
    'liters',
    'gebindegröße',
    'größe',
  ],
  reference: [
    'reference',
    'ref',
    'delivery note',
    'note',
    'invoice',
    'order',
    'number of note',
    'lieferschein',
  ],
}

const plain = (heading: string): string => heading.trim().toLowerCase().replaceAll(/\s+/gu, ' ')

/**
 * Which column holds what: as the headings were named last time (`remembered`), else by headings in common use, each
 * column once.
 */
export function guessColumns(
  headings: readonly string[],
  remembered: readonly { readonly field: string; readonly column: string }[],
): DeliveryColumns {
  const taken = new Set<number>()
  const find = (wanted: (heading: string) => boolean): number | null => {
    const index = headings.findIndex((heading, at) => !taken.has(at) && wanted(plain(heading)))
    if (index === -1) return null
    taken.add(index)
    return index
  }
  const found = new Map<DeliveryField, number | null>()
  for (const field of DELIVERY_FIELDS) {
    const before = remembered.find((item) => item.field === field)
    if (before !== undefined)
      found.set(
        field,
        find((heading) => heading === plain(before.column)),
      )
  }
  for (const match of [exact, begins])
    for (const field of DELIVERY_FIELDS)
      if ((found.get(field) ?? null) === null)
        found.set(
          field,
          find((heading) => match(heading, field)),
        )
  const column = (field: DeliveryField): number | null => found.get(field) ?? null
  return {
    date: column('date'),
    product: column('product'),
    containers: column('containers'),
    size: column('size'),
    reference: column('reference'),
  }
}

const exact = (heading: string, field: DeliveryField): boolean => WORDS[field].includes(heading)
const begins = (heading: string, field: DeliveryField): boolean =>
  WORDS[field].some((word) => heading.startsWith(`${word} `) || heading.endsWith(` ${word}`))

/** A column chosen for a field; no other field keeps it, for a column holds one thing. */
export const withColumn = (
  columns: DeliveryColumns,
  field: DeliveryField,
  index: number | null,
): DeliveryColumns => {
  const free = (at: DeliveryField): number | null => (columns[at] === index ? null : columns[at])
  return {
    date: free('date'),
    product: free('product'),
    containers: free('containers'),
    size: free('size'),
    reference: free('reference'),
    [field]: index,
  }
}

/** What to remember of a choice of columns: the headings. */
export const rememberColumns = (
  columns: DeliveryColumns,
  headings: readonly string[],
): readonly { readonly field: DeliveryField; readonly column: string }[] =>
  DELIVERY_FIELDS.flatMap((field) => {
    const index = columns[field]
    const column = index === null ? undefined : headings[index]
    return column === undefined ? [] : [{ field, column: column.slice(0, 200) }]
  })
