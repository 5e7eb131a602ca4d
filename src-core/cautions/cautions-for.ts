import type { Product } from '../records'
import { CAUTIONS } from './caution-table'
import { hazardsOf, partnersOf, productsOnSite } from './incompatible'
import type { Caution, CautionRequest, CautionRow, IncompatiblePartner } from './types'

/**
 * The cautions that belong to a moment, in the order they are to be read: those that stop first. Each appears once,
 * and once per product where it speaks of one. A product with an unknown id, or none named at a pump, still gets the
 * general cautions, with "the product" for its name.
 */
export function cautionsFor(request: CautionRequest): readonly Caution[] {
  const onSite = productsOnSite(request.site, request.products)
  const atHand = productsAtHand(request, onSite)
  const found: Caution[] = []
  for (const row of CAUTIONS) {
    if (!row.triggers.includes(request.trigger)) continue
    if (!row.perProduct) found.push(fill(row, null, [], request.texts))
    else
      for (const product of atHand) {
        const partners = row.id === 'never-mix' && product !== null ? partnersOf(product, onSite) : []
        if (applies(row, product, partners)) found.push(fill(row, product, partners, request.texts))
      }
  }
  const weight = { stop: 0, warn: 1, note: 2 }
  return found.toSorted((a, b) => weight[a.severity] - weight[b.severity])
}

function productsAtHand(request: CautionRequest, onSite: readonly Product[]): readonly (Product | null)[] {
  if (request.productId === undefined) return onSite
  return [request.products.find((product) => product.id === request.productId) ?? null]
}

function applies(
  row: CautionRow,
  product: Product | null,
  partners: readonly IncompatiblePartner[],
): boolean {
  if (row.id === 'never-mix') return partners.length > 0
  if (row.id === 'corrosive') return product !== null && hazardsOf(product).has('corrosive')
  return true
}

/** A replaced text that is empty does not count: a caution can be reworded, not silenced. */
function fill(
  row: CautionRow,
  product: Product | null,
  partners: readonly IncompatiblePartner[],
  texts: CautionRequest['texts'] = [],
): Caution {
  const own = texts.find((text) => text.caution === row.id)?.text.trim() ?? ''
  const names: Record<string, string> = {
    product: product === null || product.name === '' ? 'the product' : product.name,
    others: listOf(partners.map((partner) => partner.name)),
  }
  const template = own === '' ? row.text : own
  return {
    id: row.id,
    productId: product?.id ?? null,
    productName: product?.name ?? null,
    title: row.title,
    text: capital(template.replace(/\{(product|others)\}/g, (_, name: string) => names[name] ?? '')),
    severity: row.severity,
    confirm: row.confirm,
    source: row.source,
    edited: own !== '',
    partners,
  }
}

const listOf = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
