import { lineFit } from '../statistics/line-fit'
import { slopeTest } from '../statistics/slope-test'
import { AGREEMENT, MONOTONE_STOPS, MONOTONE_WARNS, TREND_STOPS, TREND_WARNS } from './series-limits'
import type { GradedFinding } from './types'

/**
 * Chance that `runs` values without any trend happen to rise every time (or fall every time): 1/runs!. Exact, because
 * each order is equally likely. Three prove nothing (1 in 6), five are a finding (1 in 120).
 */
export function monotoneOdds(runs: number): number {
  let odds = 1
  for (let k = 2; k <= Math.min(runs, 170); k += 1) odds /= k
  return odds
}

/**
 * Whether a series (mL/min, in the order run) is moving: every step the same way, or a slope that the t test with
 * n - 2 degrees of freedom finds. A move that stays within what good runs differ by warns and never stops.
 */
export function trendFinding(flows: readonly number[]): GradedFinding | null {
  if (flows.length < MONOTONE_WARNS) return null
  const way = monotone(flows)
  if (way === null && tooFlat(flows)) return null
  const fit = lineFit(flows.map((y, x) => ({ x, y })))
  if (!fit.ok) return null
  const perRun = fit.value.slope
  const matters = Math.abs(perRun) * (flows.length - 1) > AGREEMENT * Math.abs(mean(flows))
  const grade = (stops: boolean): 'stops' | 'warns' => (stops && matters ? 'stops' : 'warns')
  if (way !== null)
    return {
      code: way,
      runs: flows.length,
      odds: monotoneOdds(flows.length),
      perRun,
      severity: grade(flows.length >= MONOTONE_STOPS),
    }
  const test = slopeTest(fit.value)
  if (test === null || test.p >= TREND_WARNS || !matters) return null
  return {
    code: 'trend',
    direction: perRun > 0 ? 'rising' : 'falling',
    perRun,
    t: test.t,
    p: test.p,
    severity: grade(test.p < TREND_STOPS),
  }
}

/**
 * Whether no line through the values can rise enough to matter: a least-squares line through equally spaced points rises
 * by less than 1.5 times their range, since |slope| (n - 1) <= range (n - 1) sum|dx| / (2 sum dx^2), whose limit is 1.5.
 */
const tooFlat = (flows: readonly number[]): boolean =>
  1.5 * (Math.max(...flows) - Math.min(...flows)) < AGREEMENT * Math.abs(mean(flows)) * (1 - 1e-9)

/**
 * Place of the first run from which a series has settled: the last three agree within 2 % and do not all step the
 * same way. Null when they do not; earlier runs only finished the priming.
 */
export function settledFrom(flows: readonly number[]): number | null {
  const first = flows.length - 3
  const last = flows.slice(Math.max(0, first))
  if (first < 0) return null
  const spread = Math.max(...last) - Math.min(...last)
  return spread <= AGREEMENT * Math.abs(mean(last)) && monotone(last) === null ? first : null
}

function monotone(values: readonly number[]): 'rising' | 'falling' | null {
  const steps = values.slice(1).map((value, i) => Math.sign(value - (values[i] ?? value)))
  if (steps.every((step) => step > 0)) return 'rising'
  return steps.every((step) => step < 0) ? 'falling' : null
}

const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length
