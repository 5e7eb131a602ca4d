import type { Reorder } from '../spend/reorder'
import type { Outlasting } from '../spend/shelf-life'
import { dayWords } from './day-words'

/** How the shelf stands: before anything else is read. `lot`: what is not used up while it keeps, if anything. */
export function shelfState(
  { daysOfCover, leadDays, orderNow }: Reorder,
  lot: Outlasting | null,
): {
  readonly tone: 'good' | 'warn' | 'bad'
  readonly word: string
} {
  if (daysOfCover <= leadDays) return { tone: 'bad', word: 'Runs out before a delivery' }
  if (orderNow) return { tone: 'warn', word: 'Order now' }
  return lot?.past === true
    ? { tone: 'warn', word: 'Some is past its time' }
    : { tone: 'good', word: 'Enough' }
}

export const orderByWords = ({ orderNow, orderOn }: Reorder): string =>
  orderNow ? 'Order now' : `Order by ${dayWords(orderOn)}`

/** How long the stock lasts, as it follows "lasts". */
export const lastsWords = ({ daysOfCover, runsOutOn }: Reorder): readonly [string, string] =>
  daysOfCover < 1
    ? ['used up', 'if nothing came in unbooked']
    : [
        `${Math.floor(daysOfCover)} ${Math.floor(daysOfCover) === 1 ? 'day' : 'days'}`,
        `to ${dayWords(runsOutOn)}`,
      ]

/** Why fewer are ordered than wanted; null when that is not so. */
export function orderLimitWords(order: Reorder): string | null {
  if (order.containerOutlastsShelfLife)
    return 'One container lasts longer than the product keeps. Ask for a smaller size.'
  return order.cappedByShelfLife ? 'Fewer than wanted: more would outlast the time the product keeps.' : null
}

/** A delivery that is not used up while it keeps. */
export const outlastingWords = (lot: Outlasting): string =>
  lot.past
    ? `What came on ${dayWords(lot.deliveredOn)} kept until ${dayWords(lot.keepsUntil)} and is not used up. Test its strength, or take it out.`
    : `What came on ${dayWords(lot.deliveredOn)} keeps until ${dayWords(lot.keepsUntil)}, but lasts to ${dayWords(lot.usedUpOn)}. Use the oldest first and order less at a time.`
