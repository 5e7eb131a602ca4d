import type { Decision, BasisUnit } from '../dose/types'
import type { RunResult, SeriesQuality } from '../drawdown/types'
import type { PumpDrift } from '../drift/types'
import type { Outcome } from '../outcome'
import type { Problem } from '../problem'
import type { CurrencyCode, Day, Id, Instant, ProductRole, TestMethod } from '../records'
import type { TurnAdvice } from '../screw/types'
import type { MachineRacks } from '../spend/site-use'
import type { PumpSaving, PumpUse, SpendTotals } from '../spend/types'
import type { Estimate } from '../statistics/estimate'
import type { BoosterLag } from '../tank/booster-of-pump'
import type { TankResult } from '../tank/tank-result'
import type { VerifiedStrength } from '../verify/verification-result'
import type { PumpSetPoint } from './set-points'

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

/** A chemical check against what the pump's last flow test predicts. */
export type VerificationResult = VerifiedStrength

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
  /** null once the visit is closed: advice is for the bench */
  readonly advice: TurnAdvice | null
  readonly verifications: readonly VerificationResult[]
  /** the wash it feeds, at the last flow; null for a pump that feeds the final rinse */
  readonly tank: TankResult | null
  /** the heater before the final rinse; null for a pump that feeds a tank */
  readonly booster: BoosterLag | null
}

export interface VisitResult {
  readonly visitId: Id
  readonly startedAt: Instant
  readonly closed: boolean
  readonly pumps: readonly PumpVisit[]
  readonly inWindow: number
  readonly tested: number
  readonly saving: readonly PumpSaving[]
  /** what the controllers are to be set to, pump by pump that a probe controls */
  readonly setPoints: readonly PumpSetPoint[]
}

export type { PumpSaving, PumpUse, RackRate, SpendTotals } from '../spend/types'

/** Everything computed about a site: what the screens, the report and the headless command show. */
export interface Worksheet {
  readonly siteId: Id
  readonly siteName: string
  readonly currency: CurrencyCode
  readonly asOf: Day
  readonly visits: readonly VisitResult[]
  /** the average month at the last known settings and the prices of `asOf` */
  readonly use: readonly PumpUse[]
  readonly racks: readonly MachineRacks[]
  readonly totals: SpendTotals
  /** what time does to each pump: wear, the day it leaves its window, the next visit */
  readonly drift: readonly { readonly pumpId: Id; readonly drift: PumpDrift }[]
}
