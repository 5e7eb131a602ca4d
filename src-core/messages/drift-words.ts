import type { Leaving, NextVisit, PumpDrift, TubeAdvice, TubeReason } from '../drift/types'
import { addDays } from '../units/days'
import { dayWords } from './day-words'

/** How a number is written, with the decimal sign in use. */
export type Show = (value: number) => string

export const later = (since: string, days: number): string => dayWords(addDays(since, Math.round(days)))

/** The day the flow leaves its window, with its interval. */
export function leavingWords({ since, days, earliest, latest, edge }: Leaving): string {
  if (days === 0) return 'It is outside its window now.'
  const way = edge === 'low' ? 'falls' : 'rises'
  if (days === null)
    return earliest === null || earliest === 0
      ? 'No day can be foretold on which it leaves its window.'
      : `As it goes it stays in its window; it ${way} out of it before ${later(since, earliest)} with one chance in forty at most.`
  const from =
    earliest === null || earliest === 0 ? 'perhaps already' : `not before ${later(since, earliest)}`
  if (latest === null)
    return `No drift is proved. At the middle of what the tests allow it ${way} out of its window about ${later(since, days)}, ${from}.`
  const to = `not after ${later(since, latest)}`
  return `If it goes on so it ${way} out of its window about ${later(since, days)} (95\u00a0%: ${from}, ${to}).`
}

/** The same for a pump as it stands: with the racks it is in, or why no day can be told. */
export function outlookWords({ leaving }: PumpDrift, show: Show): string {
  if (!leaving.ok) return 'No day to tell: that takes a window and two visits to one tube.'
  const { racks } = leaving.value
  const said = leavingWords(leaving.value)
  return racks === null || racks === 0
    ? said
    : `${said} That is about ${show(Math.round(racks))} racks from the last test.`
}

export function rateWords({ outlook }: PumpDrift, show: Show): string {
  if (!outlook.ok) return 'No rate yet: it takes two visits to one tube.'
  const { decay, rateFrom } = outlook.value
  const amount = `${show(Math.abs(decay.in30Days.percent))} ± ${show(decay.in30Days.expanded)} % in 30 days`
  const whose = rateFrom === 'this-tube' ? '' : ', as the tube before did'
  switch (decay.direction) {
    case 'falling':
      return `Falls by ${amount}${whose}.`
    case 'rising':
      return `Rises by ${amount}${whose}. That is not wear: think of siphoning, a raised container, a higher voltage, a wrong tube, or somebody at the screw.`
    case 'steady':
      return `Steady as far as the tests can tell (${amount})${whose}.`
  }
}

const VISIT_REASONS: Record<NextVisit['reason'], string> = {
  'settling-in': 'a new tube changes most in its first week',
  'leaves-window': 'by then one pump in six like this has left its window',
  'already-out': 'it is outside its window',
  usual: 'the usual interval of this site',
}

export const nextVisitWords = (next: NextVisit): string =>
  `${dayWords(next.on)}: ${VISIT_REASONS[next.reason]}.`

/** What is to be done about the tube, and how old it is. */
export const tubeVerdict = ({ replace }: TubeAdvice): string =>
  replace ? 'Replace the tube, then adjust' : 'Nothing speaks against it'

export const tubeAgeWords = ({ ageDays }: TubeAdvice): string =>
  ageDays === null
    ? 'The day it was fitted is not on record.'
    : `${ageDays} ${ageDays === 1 ? 'day' : 'days'} old.`

export function tubeReasonWords(reason: TubeReason, show: Show): string {
  switch (reason.code) {
    case 'fell-at-once':
      return `Found at ${show(reason.found)} mL/min after it was left at ${show(reason.left)}, more than chance allows. If nobody turned the screw: worn tube, leak, blockage or thick cold product.`
    case 'worn-down':
      return `All falls between visits on this tube together leave ${show(100 * reason.part)} % of its flow. Turning a worn tube up overdoses once it is replaced.`
    case 'overdue':
      return `${reason.days} ${reason.days === 1 ? 'day' : 'days'} past its time.`
    case 'screw-does-not-act':
      return 'The screw no longer moves the flow.'
    case 'scatters':
      return 'Its runs scatter by more than 5 % although the line was primed.'
  }
}
