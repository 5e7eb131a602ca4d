import type { Outcome } from '../outcome'

/** One timed run, worked out. */
export interface RunResult {
  readonly runId: string
  /** mL, corrected for an immersed tube */
  readonly volume: Outcome<number>
  /** s */
  readonly seconds: Outcome<number>
  /** mL/min */
  readonly flow: Outcome<number>
  readonly excluded: string | null
}

export type QualityFinding =
  | { readonly code: 'not-primed' }
  | { readonly code: 'too-few-runs'; readonly have: number; readonly need: number }
  | { readonly code: 'rising'; readonly runs: number; readonly odds: number; readonly perRun: number }
  | { readonly code: 'falling'; readonly runs: number; readonly odds: number; readonly perRun: number }
  | {
      readonly code: 'trend'
      readonly direction: 'rising' | 'falling'
      readonly perRun: number
      readonly t: number
      readonly p: number
    }
  | {
      readonly code: 'outlier'
      readonly runId: string
      readonly statistic: number
      readonly critical: number
    }
  | { readonly code: 'scatter'; readonly cv: number; readonly limit: number }
  | { readonly code: 'two-levels'; readonly low: number; readonly high: number }
  | { readonly code: 'few-graduations'; readonly graduations: number; readonly need: number }
  | { readonly code: 'few-pulses'; readonly pulses: number; readonly need: number }
  | { readonly code: 'no-flow' }
  | { readonly code: 'tube-overdue'; readonly days: number }

/** What a series says about itself. `stops` refuses a turn; `warns` does not. */
export interface SeriesQuality {
  readonly findings: readonly (QualityFinding & { readonly severity: 'stops' | 'warns' })[]
  readonly mean: number | null
  readonly standardDeviation: number | null
  /** fraction */
  readonly cv: number | null
}
