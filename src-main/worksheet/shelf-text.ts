import { put } from '#core/explain/working'
import {
  lastsWords,
  orderByWords,
  orderLimitWords,
  outlastingWords,
  shelfState,
} from '#core/messages/order-words'
import { sentence } from '#core/messages/sentence'
import type { ProductSpend } from '#core/spend/product-spend'
import type { SiteSpend } from '#core/spend/site-spend'
import type { Worksheet } from '#core/worksheet/types'
import { money, said, shown, SIGN } from './text-parts'

/** Each product on the shelf: how long it lasts, when to order and how much. */
export const shelfLines = ({ products }: SiteSpend, worksheet: Worksheet): readonly string[] =>
  products.length === 0
    ? []
    : ['', 'On the shelf', ...products.flatMap((product) => productLines(product, worksheet))]

function productLines(
  { name, stock, reorder, outlasting }: ProductSpend,
  worksheet: Worksheet,
): readonly string[] {
  if (!reorder.ok) return [`  ${name}: ${shown(stock)}; [${sentence(reorder.problem)}]`]
  const order = reorder.value
  const limit = orderLimitWords(order)
  const lot = outlasting.ok ? outlasting.value : null
  const size = `${put(order.containerLitres, SIGN)} L`
  return [
    `  ${name}: ${shelfState(order, lot).word}. ${shown(stock)}, lasts: ${lastsWords(order).join(' ')}. ` +
      `${orderByWords(order)}: ${order.containers} × ${size}, ${said(order.cost, (cost) => money(cost, worksheet))}`,
    ...(limit === null ? [] : [`    ${limit}`]),
    ...(lot === null ? [] : [`    ${outlastingWords(lot)}`]),
  ]
}
