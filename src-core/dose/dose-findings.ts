import { pulsesPerMinute } from '../drawdown/volume-doubt'
import type { Pump, RinseWater } from '../records'
import { inUnit } from '../units/quantity'
import { read } from '../units/read'
import { doseSeconds } from './dose-seconds'
import type { ProbedPump } from './held-by-probe'

/** What is odd about a dosing time, whatever the flow. */
export type DoseFinding =
  /** the pump runs on after the rinse has stopped: into the drain or the next rack */
  | { readonly code: 'longer-than-rinse'; readonly seconds: number; readonly rinseSeconds: number }
  /** so few roller passages per dose that a dose is one pulse more or less */
  | { readonly code: 'few-pulses-per-dose'; readonly pulses: number; readonly need: number }
  /** too short for a relay to repeat */
  | { readonly code: 'too-short'; readonly seconds: number; readonly need: number }

/** Fewest pulses a dose should have, and fewest seconds a recharge. Judgement. */
export const LEAST_PULSES = 2
export const LEAST_SECONDS = 0.5

/** Findings about the time a pump runs for a rack. Inputs that are missing or wrong give none. */
export function doseFindings(
  pump: Pick<Pump, 'doseSeconds' | 'doseSecondsSpread' | 'rollers' | 'feeds'> & ProbedPump,
  rinse: RinseWater | null,
): readonly DoseFinding[] {
  const seconds = doseSeconds(pump)
  if (!seconds.ok) return []
  const t = seconds.value.value
  const findings: DoseFinding[] = []
  if (pump.feeds === 'final-rinse' && rinse?.kind === 'flow-and-seconds') {
    const rinsing = read(rinse.seconds, 'machine.rinse.seconds', { above: 0 })
    const rinseSeconds = rinsing.ok ? inUnit(rinsing.value, 's') : null
    if (rinseSeconds !== null && t > rinseSeconds)
      findings.push({ code: 'longer-than-rinse', seconds: t, rinseSeconds })
  }
  const perMinute = pulsesPerMinute(pump.rollers)
  if (perMinute.ok && perMinute.value !== null) {
    const pulses = (perMinute.value * t) / 60
    if (pulses < LEAST_PULSES) findings.push({ code: 'few-pulses-per-dose', pulses, need: LEAST_PULSES })
  }
  if (t < LEAST_SECONDS) findings.push({ code: 'too-short', seconds: t, need: LEAST_SECONDS })
  return findings
}
