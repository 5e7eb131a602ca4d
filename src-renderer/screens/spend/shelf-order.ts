import { shelfState } from '#core/messages/order-words'
import type { ProductSpend } from '#core/spend/product-spend'

type Shelf = Pick<ProductSpend, 'reorder' | 'outlasting'>

const PLACES = { bad: 0, warn: 1, good: 3 } as const
const UNKNOWN = 2

/** Products as somebody who orders wants them: what runs out first, then what to look at, then what is enough. */
export const mostPressingFirst = <T extends Shelf>(products: readonly T[]): readonly T[] =>
  products.toSorted((a, b) => placeOf(a) - placeOf(b))

const placeOf = ({ reorder, outlasting }: Shelf): number =>
  reorder.ok ? PLACES[shelfState(reorder.value, outlasting.ok ? outlasting.value : null).tone] : UNKNOWN
