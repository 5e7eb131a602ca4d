import { LEAST_PULSES, LEAST_SECONDS } from '../dose/dose-findings'
import type { SettingNote, WashModel } from './types'

/**
 * What stands out about a recharge of `seconds` s at `flow` mL/min. `pulsesPerMinute`: rollers times turns of the pump;
 * `cycleSeconds`: how long one rack takes, where it is known.
 */
export function settingNotes(input: {
  readonly model: WashModel | null
  readonly carriedOutKnown: boolean
  readonly probe: boolean
  readonly seconds: number | null
  readonly flow: number | null
  readonly pulsesPerMinute: number | null
  readonly cycleSeconds: number | null
}): readonly SettingNote[] {
  const { model, seconds } = input
  const notes: SettingNote[] = []
  if (model?.kind === 'tank' && model.netWater > model.volume)
    notes.push({ code: 'tank-replaced-each-rack', netWater: model.netWater, volume: model.volume })
  if (model?.kind === 'dump-and-refill') notes.push({ code: 'no-initial-charge-on-this-machine' })
  if (model?.kind === 'tank' && !input.carriedOutKnown) notes.push({ code: 'carried-out-not-known' })
  if (input.probe) return [...notes, { code: 'probe-holds-it' }]
  const short = tooShort(seconds, input.flow, input.pulsesPerMinute)
  if (short !== null) notes.push(short)
  if (seconds !== null && input.cycleSeconds !== null && seconds > input.cycleSeconds)
    notes.push({ code: 'cannot-keep-up', seconds, cycleSeconds: input.cycleSeconds })
  return notes
}

function tooShort(
  seconds: number | null,
  flow: number | null,
  pulsesPerMinute: number | null,
): SettingNote | null {
  if (seconds === null || !(seconds > 0) || flow === null || !(flow > 0)) return null
  const known = pulsesPerMinute !== null && pulsesPerMinute > 0
  const needed = known ? Math.max(LEAST_SECONDS, (60 * LEAST_PULSES) / pulsesPerMinute) : LEAST_SECONDS
  if (seconds >= needed) return null
  return {
    code: 'recharge-too-short',
    seconds,
    pulses: known ? (pulsesPerMinute * seconds) / 60 : null,
    flowForLonger: (flow * seconds) / needed,
  }
}
