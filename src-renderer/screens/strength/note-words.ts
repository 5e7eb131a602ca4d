import type { SettingNote } from '#core/tank/types'
import { formatNumber } from '#core/units/format'
import type { DecimalSign } from '#core/units/parse'

/** What stands out about a tank's setting, as a sentence with what to do. */
export function noteWords(note: SettingNote, sign: DecimalSign): string {
  const say = (value: number): string => formatNumber(value, 3, sign)
  switch (note.code) {
    case 'no-initial-charge-needed':
      return 'What is still in the tank is enough: no initial charge.'
    case 'no-initial-charge-on-this-machine':
      return 'This machine drops its water every cycle: the dose per rack is all there is to set.'
    case 'tank-replaced-each-rack':
      return `More water comes in per rack (${say(note.netWater)} L) than the tank holds (${say(note.volume)} L). Check both figures.`
    case 'recharge-too-short':
      return `A recharge of ${say(note.seconds)} s${note.pulses === null ? '' : ` (${say(note.pulses)} roller pulses)`} does not repeat. Lower the flow to ${say(note.flowForLonger)} mL/min or below, and lengthen it.`
    case 'cannot-keep-up':
      return `A recharge of ${say(note.seconds)} s is longer than a rack (${say(note.cycleSeconds)} s). Raise the flow.`
    case 'carried-out-not-known':
      return 'Water carried out on ware and as vapour is not recorded, so the strength is a little understated.'
    case 'probe-holds-it':
      return 'A probe holds this strength. Titrate at the machine, then set the controller; the flow only decides how fast it gets there.'
    default:
      return unhandled(note)
  }
}

const unhandled = (note: never): never => {
  throw new Error(`no words for ${JSON.stringify(note)}`)
}
