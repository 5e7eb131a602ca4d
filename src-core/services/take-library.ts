import type { DocumentStore } from '../contract/ports'
import { chain, ok, type Outcome } from '../outcome'
import type { Instrument, Product } from '../records'
import { openOrEmpty, writeLibrary } from './library'

/**
 * Adds the products and instruments a file brings that are not here. One that is here keeps its local version: prices
 * and densities of this installation are not changed by a file from elsewhere, and closed visits carry their own copy.
 */
export async function takeLibrary(
  documents: DocumentStore,
  file: { readonly products: readonly Product[]; readonly instruments: readonly Instrument[] },
): Promise<Outcome<{ readonly products: number; readonly instruments: number }>> {
  const products = await openOrEmpty(documents, 'products')
  if (!products.ok) return products
  const instruments = await openOrEmpty(documents, 'instruments')
  if (!instruments.ok) return instruments
  const newProducts = missingFrom(products.value.document.products, file.products)
  const newInstruments = missingFrom(instruments.value.document.instruments, file.instruments)
  if (newProducts.length > 0) {
    const document = products.value.document
    const written = await writeLibrary(
      documents,
      'products',
      { ...document, products: [...document.products, ...newProducts] },
      products.value,
    )
    if (!written.ok) return written
  }
  const counts = { products: newProducts.length, instruments: newInstruments.length }
  if (newInstruments.length === 0) return ok(counts)
  const document = instruments.value.document
  return chain(
    await writeLibrary(
      documents,
      'instruments',
      { ...document, instruments: [...document.instruments, ...newInstruments] },
      instruments.value,
    ),
    () => ok(counts),
  )
}

export const missingFrom = <T extends { readonly id: string }>(
  here: readonly T[],
  there: readonly T[],
): readonly T[] => {
  const ids = new Set(here.map(({ id }) => id))
  return there.filter(({ id }) => !ids.has(id))
}
