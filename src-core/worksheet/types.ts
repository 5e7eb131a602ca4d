import type { Decision, BasisUnit } from '../dose/types'
import type { RunResult, SeriesQuality } from '../drawdown/types'
import type { Outcome } from '../outcome'
import type { Problem } from '../problem'
import type { CurrencyCode, Day, Id, Instant, ProductRole, TestMethod, VerificationMethod } from '../records'
import type { TurnAdvice } from '../screw/types'
import type { Estimate } from '../statistics/estimate'
import type { Decimal } from '../units/decimal'

/** One series of runs at one screw position, worked out. */
export interface TestResult {
  readonly testId: Id
  readonly at: Instant
  readonly method: TestMethod
  /** net eighths since the witness mark of this visit */
  readonly eighths: number
  readonly runs: readonly RunResult[]
  readonly quality: SeriesQuality
  readonly flow: Outcome<Estimate<'mL/min'>>
  readonly dose: Outcome<Estimate<'mL/rack'>>
  /** every concentration the inputs allow, each on its named basis */
  readonly strengths: readonly Outcome<Estimate<BasisUnit>>[]
  readonly decision: Outcome<Decision>
}

export type PumpState =
  'not-tested' | 'proved-in' | 'in-not-proved' | 'out-not-proved' | 'proved-out' | 'cannot-tell'

export interface VerificationResult {
  readonly verificationId: Id
  readonly method: VerificationMethod
  readonly measured: Outcome<Estimate<BasisUnit>>
  readonly predicted: Outcome<Estimate<BasisUnit>>
  /** |difference| over its standard uncertainty */
  readonly agreement: Outcome<{
    readonly z: number
    readonly agrees: boolean
    readonly distrust: string | null
  }>
}

/** One pump in one visit. */
export interface PumpVisit {
  readonly pumpId: Id
  readonly pumpName: string
  readonly role: ProductRole
  readonly productId: Id | null
  readonly productName: string | null
  readonly tests: readonly TestResult[]
  /** first test */
  readonly asFound: TestResult | null
  /** last test */
  readonly asLeft: TestResult | null
  readonly state: PumpState
  /** what is still missing for this pump, in the order it is best done */
  readonly missing: readonly Problem[]
  readonly advice: TurnAdvice
  readonly verifications: readonly VerificationResult[]
}

export interface VisitResult {
  readonly visitId: Id
  readonly startedAt: Instant
  readonly closed: boolean
  readonly pumps: readonly PumpVisit[]
  readonly inWindow: number
  readonly tested: number
  readonly saving: readonly PumpSaving[]
}

/** What an adjustment changed: positive when less product is used than as found. */
export interface PumpSaving {
  readonly pumpId: Id
  readonly litresPerMonth: Outcome<Estimate<'L/month'>>
  readonly moneyPerMonth: Outcome<Estimate<'money/month'>>
}

/** Month's use of one product by one pump at its last known setting. */
export interface PumpUse {
  readonly pumpId: Id
  readonly productId: Id | null
  readonly racksPerMonth: Outcome<number>
  readonly doseFrom: 'as-left' | 'none'
  readonly litresPerMonth: Outcome<Estimate<'L/month'>>
  readonly containersPerMonth: Outcome<number>
  readonly costPerMonth: Outcome<Decimal>
  readonly costPerRack: Outcome<Decimal>
}

/** Everything computed about a site: what the screens, the report and the headless command show. */
export interface Worksheet {
  readonly siteId: Id
  readonly siteName: string
  readonly currency: CurrencyCode
  readonly asOf: Day
  readonly visits: readonly VisitResult[]
  readonly use: readonly PumpUse[]
  readonly totals: {
    readonly costPerMonth: Outcome<Decimal>
    readonly costPerRack: Outcome<Decimal>
    readonly racksPerMonth: Outcome<number>
  }
}
