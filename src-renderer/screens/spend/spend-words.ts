import type { ChangeCause } from '#core/spend/changes-since'
import type { StockCheck, StockFinding, StockReason } from '#core/spend/reconcile-types'
import type { UseAssumption } from '#core/spend/types'
import { percentWords } from '#core/messages/count-words'
import type { DecimalSign } from '#core/units/parse'
import { dayWords } from '../../state/days-words'

export { percentWords }

export const REASONS: Readonly<Record<StockReason, string>> = {
  'more-racks': 'More racks than stated, or empty and repeated cycles',
  'pump-drifted-up': 'The pump gives more than it was set to: screw turned, or siphoning when idle',
  'false-signals': 'The pump runs on false rack signals or door flaps; extra drain-and-fills',
  'leak-or-other-use': 'A leak, a spill, or the product used for floors, pots or another machine',
  'count-or-booking': 'A late or guessed count, or a delivery that was not booked',
  'priming-losses': 'Priming after each container change, usually 1 to 3 %',
  'fewer-racks': 'Fewer racks than stated, or days closed',
  'pump-worn-or-air': 'The pump gives less than it was set to: worn tube, air, an empty container',
  'bypassed-or-hand-dosed': 'The feeder bypassed, the machine out of use, or dosing by hand',
  'delivery-not-received': 'A delivery booked but not received, or of another product or size',
  'counted-high-or-twice': 'Counted too high, or a delivery booked twice',
  'product-substituted': 'The product swapped for another, or diluted',
}

export const CHECKS: Readonly<Record<Exclude<StockCheck, 'none'>, string>> = {
  'as-found-test':
    'Test the pump as found, before anything is adjusted: that separates the pump from the racks.',
  'read-rack-counter':
    'Read the rack counter at this and the next visit: the pump is cleared, the racks are not.',
  'check-bookings': 'Go through counts and delivery notes of these days, and count again.',
  'repair-pump': 'The as-found test explains it. Put the pump right: tube, leak, air, then the screw.',
  'look-for-other-use':
    'Pump and racks are cleared. Look for leaks, false signals and other use of the product.',
}

export function findingWords(finding: StockFinding, sign: DecimalSign): string {
  switch (finding.code) {
    case 'too-coarse':
      return 'Less than two containers were used: counting cannot tell much yet.'
    case 'booking-error':
      return 'More was counted at the end than there can have been.'
    case 'part-not-counted':
      return `On ${dayWords(finding.on)} the container in use was not counted.`
    case 'pump-explains':
      return `The as-found test was ${byWords(finding.drift, sign)} what the pump was left at. That explains it.`
    case 'pump-does-not-explain':
      return `The as-found test was ${byWords(finding.drift, sign)} what the pump was left at. That does not explain it.`
    case 'racks-stated-only':
      return 'Racks are as stated; no counter covers these days.'
  }
}

/** `4.1 % below`; `as good as at` for less than half a percent. */
export function byWords(relative: number, sign: DecimalSign): string {
  if (Math.abs(relative) < 0.005) return 'as good as'
  return `${percentWords(Math.abs(relative), sign)} ${relative < 0 ? 'below' : 'above'}`
}

export const CAUSES: Readonly<Record<ChangeCause, string>> = {
  racks: 'Racks',
  dose: 'Dose',
  price: 'Price',
  product: 'Other product',
}

export const ASSUMED: Readonly<Record<UseAssumption, string>> = {
  'racks-spread': 'how well the racks per day are known',
  'no-initial-charge': 'the initial charge',
  'no-priming-loss': 'the line’s bore and length, for priming losses',
  'probe-holds-target': 'a probe holds the tank’s target',
}

export { count } from '#core/messages/count-words'
export { attentionWords, type AttentionWords } from '#core/messages/attention-words'
