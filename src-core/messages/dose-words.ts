import type { DoseFinding } from '../dose/dose-findings'
import { formatNumber } from '../units/format'
import type { DecimalSign } from '../units/parse'

/** What is odd about the time a pump runs for a rack, and what to do about it. */
export function doseFindingSentence(finding: DoseFinding, sign: DecimalSign): string {
  const number = (value: number): string => formatNumber(value, 3, sign)
  switch (finding.code) {
    case 'longer-than-rinse':
      return `The pump runs ${number(finding.seconds)} s a rack, the rinse only ${number(finding.rinseSeconds)} s: the rest goes down the drain or into the next rack. Shorten the pump’s time, then turn up its flow.`
    case 'few-pulses-per-dose':
      return `Only ${number(finding.pulses)} roller passages make a dose, so one more or less shows. A lower flow for a longer time would even it out.`
    case 'too-short':
      return `The pump runs only ${number(finding.seconds)} s a rack, too short to repeat well. A lower flow for a longer time would even it out.`
  }
}
