import { BASIS_UNIT } from '../dose/types'
import type { LabelBreach } from '../sanitize/window-outside-label'
import { formatTyped, unitSymbol } from '../units/format'
import type { DecimalSign } from '../units/parse'

const EDGE = { target: 'target', high: 'high limit', low: 'low limit' } as const

/** That a window leaves what a product's label allows, by which number, and what to do. */
export function labelBreachSentence(breach: LabelBreach, product: string, sign: DecimalSign): string {
  const { edge, side, limit, basis } = breach
  const [most, put] = side === 'above' ? ['most', 'Lower'] : ['least', 'Raise']
  return (
    `The ${EDGE[edge]} lies ${side} what the label of ${product} allows: at ${most} ${formatTyped(limit, sign)} ` +
    `${unitSymbol(BASIS_UNIT[basis])}. ${put} it; the label decides how the product may be used.`
  )
}
