import type { CostChange } from '#core/spend/changes-since'
import type { Decimal } from '#core/units/decimal'
import { CAUSES } from './spend-words'

/** What moved the cost of a month, in one sentence: what pulled the way the whole went first, then what held against it. */
export function changesFinding(
  { before, now, steps }: CostChange,
  since: string,
  write: { readonly money: (amount: Decimal) => string; readonly signed: (amount: Decimal) => string },
): string {
  const total = now.minus(before)
  if (total.isZero()) return `A month costs what it did on ${since}.`
  const way = total.gt(0) ? 1 : -1
  const parts = steps
    .filter(({ change }) => !change.isZero())
    .toSorted((a, b) => b.change.minus(a.change).times(way).toNumber())
    .map(({ cause, change }) => `${CAUSES[cause].toLowerCase()} ${write.signed(change)}`)
  return `A month costs ${write.money(total.abs())} ${way > 0 ? 'more' : 'less'} than on ${since}: ${parts.join(', ')}.`
}
