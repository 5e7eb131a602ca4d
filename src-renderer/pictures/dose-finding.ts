import { formatEstimate, formatNumber, unitSymbol } from '#core/units/format'
import type { DecimalSign } from '#core/units/parse'
import type { DoseStory } from './dose-rounds'
import { VERDICT_SHORT } from './verdict-words'

/** What the dose picture says, for somebody who hears it. */
export function doseFinding(story: DoseStory, sign: DecimalSign): string {
  const unit = unitSymbol(story.rounds[0]?.estimate.unit ?? 'mL/rack')
  const number = (value: number): string => formatNumber(value, 3, sign)
  const { low, target, high } = story.window
  const rounds = story.rounds.map(({ label, estimate, verdict }) => {
    const text = formatEstimate(estimate, sign)
    return `${label} ${text.value} ± ${text.expanded}, ${VERDICT_SHORT[verdict]}.`
  })
  return `Dose against its window of ${number(low)} to ${number(high)} ${unit}, target ${number(target)}. ${rounds.join(' ')}`
}
