import type { Outcome } from '../outcome'
import type { Instrument, Product, Pump, PumpTube } from '../records'
import type { Estimate } from '../statistics/estimate'

/** What stood around a test: where its numbers come from and how far they can be trusted. */
export interface TestConditions {
  readonly instrument: Instrument | null
  readonly product: Product | null
  readonly tube: PumpTube
  readonly rollers: Pump['rollers']
}

/** A series of runs, worked out. */
export interface FlowResult {
  readonly runs: readonly RunResult[]
  readonly flow: Outcome<Estimate<'mL/min'>>
  readonly quality: SeriesQuality
  /** where the series stands, for forecasts; null while there is no flow */
  readonly state: SeriesState | null
}

/** Where a series stands: enough to forecast what more runs, longer runs or another instrument would bring. */
export interface SeriesState {
  /** mL/min */
  readonly flow: number
  readonly runs: number
  /** s, of an average run */
  readonly seconds: number
  /** mL/min; null for a single run */
  readonly standardDeviation: number | null
  readonly instrumentId: string
  readonly doubt: VolumeDoubt
}

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

/** `stops` refuses a turn; `warns` does not. */
export type GradedFinding = QualityFinding & { readonly severity: 'stops' | 'warns' }

/** What a series says about itself. */
export interface SeriesQuality {
  readonly findings: readonly GradedFinding[]
  /** mL/min */
  readonly mean: number | null
  /** mL/min */
  readonly standardDeviation: number | null
  /** fraction */
  readonly cv: number | null
}

/** One run that counts, in plain numbers. */
export interface GoodRun {
  readonly runId: string
  /** mL, corrected */
  readonly volume: number
  /** s */
  readonly seconds: number
  /** mL/min */
  readonly flow: number
}

/**
 * How far the volume of one run may be wrong, in mL of true volume unless it says otherwise; all standard
 * uncertainties. Runs of one test share the lines marked so: more runs do not make those smaller.
 */
export interface VolumeDoubt {
  /** both readings of one run together; null when the graduation is unknown */
  readonly reading: number | null
  /** the same, but no coarser than these readings were really read; shared while the runs show no scatter */
  readonly unresolved: number
  /** shared */
  readonly instrument: { readonly source: 'cylinder-tolerance' | 'scale'; readonly standard: number }
  /** shared; fractions of the volume */
  readonly factors: readonly {
    readonly source: 'tube-factor' | 'density'
    readonly relative: number
    readonly sign?: -1
  }[]
  /** roller passages per minute; null when unknown */
  readonly pulsesPerMinute: number | null
}
