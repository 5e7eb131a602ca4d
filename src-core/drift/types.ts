import type { Outcome } from '../outcome'
import type { Day, Id } from '../records'
import type { Estimate } from '../statistics/estimate'

/** A flow test that can be trusted, in the order of time. */
export interface FlowTest {
  readonly kind: 'test'
  readonly visitId: Id
  readonly testId: Id
  readonly day: Day
  readonly flow: Estimate<'mL/min'>
}

/** What happened between tests: what makes the next flow another one for a known reason. */
export type Break =
  | { readonly kind: 'turn'; readonly day: Day }
  | { readonly kind: 'tube'; readonly day: Day }
  | { readonly kind: 'product'; readonly day: Day }

/** The life of one pump, oldest first. */
export type PumpHistory = readonly (FlowTest | Break)[]

/** From what one visit left to what the next one found. */
export interface Change {
  readonly from: FlowTest
  readonly to: FlowTest
  readonly days: number
  /** found over left, less 1 */
  readonly relative: number
  /** E_n score of the two; above 1 they really differ. Null when neither flow has an uncertainty */
  readonly score: number | null
  readonly differs: boolean
  /** rose by more than a tenth and not by chance: somebody or something changed the pump, time did not */
  readonly jumped: boolean
  /** something other than time lies between */
  readonly across: 'nothing' | 'turn' | 'tube' | 'product'
}

/** How fast the flow of one tube falls: ln q = a - rate x age. */
export interface Decay {
  /** per day; positive when the flow falls */
  readonly rate: number
  readonly standard: number
  /** half-width of the 95 % interval, per day */
  readonly expanded: number
  readonly degreesOfFreedom: number
  /** the part of the flow that is gone after 30 days, percent, with the half-width of its 95 % interval */
  readonly in30Days: { readonly percent: number; readonly expanded: number }
  /** tests used, and the days between the first and the last of them */
  readonly tests: number
  readonly days: number
  /** falling or rising for certain, or neither within what the tests can tell */
  readonly direction: 'falling' | 'rising' | 'steady'
  /** the first days of a new tube are among the tests, for want of others */
  readonly includesSettling: boolean
}

/** One tube, from when it was fitted (null: before the record begins) until it was replaced (null: still there). */
export interface TubeLife {
  readonly from: Day | null
  readonly to: Day | null
  readonly decay: Outcome<Decay>
}

/** When the flow leaves its window, in days from the last test. Null: not within ten years. */
export interface Leaving {
  readonly edge: 'low' | 'high'
  /** day counted from: the last test */
  readonly since: Day
  readonly days: number | null
  /** ends of the 95 % interval */
  readonly earliest: number | null
  readonly latest: number | null
  /** day by which the flow has left with a chance of one in six */
  readonly prudent: number | null
  /** racks until then, where the racks of a day are known */
  readonly racks: number | null
  readonly earliestRacks: number | null
  readonly rateFrom: 'this-tube' | 'an-earlier-tube'
}

export type TubeReason =
  | { readonly code: 'fell-at-once'; readonly left: number; readonly found: number; readonly score: number }
  | { readonly code: 'worn-down'; readonly part: number }
  | { readonly code: 'overdue'; readonly days: number }
  | { readonly code: 'screw-does-not-act' }
  | { readonly code: 'scatters' }

/** What the rep is told about the tube. `replace` false with no reasons: nothing speaks against it. */
export interface TubeAdvice {
  readonly replace: boolean
  readonly reasons: readonly TubeReason[]
  /** age of the tube today, days; null when the day it was fitted is unknown */
  readonly ageDays: number | null
}

export interface NextVisit {
  readonly on: Day
  readonly days: number
  readonly reason: 'settling-in' | 'leaves-window' | 'already-out' | 'usual'
}

export interface ChangeChart {
  /** change from left to found at each visit, percent, with the limits of an individuals chart */
  readonly values: readonly { readonly day: Day; readonly percent: number; readonly outside: boolean }[]
  readonly mean: number
  readonly lower: number
  readonly upper: number
}

/** What a forecast starts from: the last trusted test, and the rate to go on at. */
export interface Outlook {
  readonly test: FlowTest
  /** an earlier tube's rate comes with its uncertainty doubled */
  readonly decay: Decay
  readonly rateFrom: Leaving['rateFrom']
}

/** What time does to one pump. */
export interface PumpDrift {
  readonly changes: readonly Change[]
  readonly tubes: readonly TubeLife[]
  readonly chart: Outcome<ChangeChart>
  readonly outlook: Outcome<Outlook>
  readonly leaving: Outcome<Leaving>
  readonly tube: TubeAdvice
  readonly nextVisit: NextVisit | null
}
