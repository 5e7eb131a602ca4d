import type { AttentionReason } from '../spend/attention'
import type { DecimalSign } from '../units/parse'
import { count, percentWords } from './count-words'
import { dayWords } from './day-words'

export interface AttentionWords {
  readonly tone: 'bad' | 'warn' | 'unknown'
  readonly word: string
}

/** Why a site wants attention, short enough for a mark. */
export function attentionWords(
  reason: AttentionReason,
  productName: (productId: string) => string,
  sign: DecimalSign,
): AttentionWords {
  switch (reason.code) {
    case 'out-of-window':
      return { tone: 'bad', word: `${count(reason.pumps, 'pump')} out of window` }
    case 'running-out':
      return {
        tone: 'bad',
        word: `${productName(reason.productId)} ${reason.days < 1 ? 'used up' : `runs out in ${count(reason.days, 'day')}`}`,
      }
    case 'visit-overdue':
      return { tone: 'warn', word: `Visit ${count(reason.days, 'day')} overdue` }
    case 'unreconciled':
      return {
        tone: 'warn',
        word: `${productName(reason.productId)}: ${percentWords(Math.abs(reason.relative), sign)} ${reason.relative > 0 ? 'more' : 'less'} used than expected`,
      }
    case 'order-now':
      return {
        tone: 'warn',
        word: `Order ${reason.containers} × ${productName(reason.productId)}`,
      }
    case 'past-its-time':
      return {
        tone: 'warn',
        word: `${productName(reason.productId)} past its shelf life since ${dayWords(reason.keepsUntil)}`,
      }
    case 'tubes-overdue':
      return {
        tone: 'warn',
        word:
          reason.tubes === 1
            ? `One tube ${count(reason.days, 'day')} over its time`
            : `${reason.tubes} tubes up to ${count(reason.days, 'day')} over their time`,
      }
    case 'not-tested':
      return { tone: 'unknown', word: `${count(reason.pumps, 'pump')} never tested` }
    case 'cost-unknown':
      return { tone: 'unknown', word: `${count(reason.lines, 'cost')} not known` }
  }
}
