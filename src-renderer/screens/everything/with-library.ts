import type { Instrument, Product } from '#core/records/index'

/**
 * A site file brings what its own site uses. One file of an archive brings the whole library instead, so that products
 * and instruments no site uses yet come along, too.
 */
export function withLibrary(
  file: string,
  products: readonly Product[],
  instruments: readonly Instrument[],
): string {
  const document = JSON.parse(file) as Readonly<Record<string, unknown>>
  return JSON.stringify({ ...document, products, instruments })
}
