import type { Estimate } from '../statistics/estimate'

/** What the learner has seen: net eighths since the witness mark, and the flow there. */
export interface ScrewObservation {
  readonly eighths: number
  /** mL/min */
  readonly flow: number
  /** standard uncertainty, mL/min */
  readonly standard: number
  /** half-width of the 95 % interval, mL/min; taken as 1.96 standard uncertainties when absent */
  readonly expanded?: number
  /** the part of `standard` that differs from test to test, mL/min; all of it when absent */
  readonly scatter?: number
  /** runs behind the flow; 3 when absent */
  readonly runs?: number
}

/** How much one turn is believed to do before this visit taught anything. mL/min per turn. */
export interface GainPrior {
  readonly gain: number
  readonly standard: number
  readonly from: 'earlier-visits' | 'same-kind' | 'none'
}

/** Net eighths since the witness mark at which the screw stops; null where nobody found out. */
export interface ScrewStops {
  readonly down: number | null
  readonly up: number | null
}

/** Everything the advice is made from: what a rep can see, nothing else. */
export interface TurnQuestion {
  /** flow the window's target asks for, and its limits, mL/min; low <= target <= high */
  readonly target: number
  readonly low: number
  readonly high: number
  /** tests at this pump since its tube was fitted or the visit began, as-found first */
  readonly observations: readonly ScrewObservation[]
  readonly prior: GainPrior | null
  readonly stops?: ScrewStops
  /** the last move before the first test was clockwise and nobody has touched the screw since */
  readonly playTakenUp?: boolean
  /** a product of which more or less than the window must not be given even for a test, such as a sanitizer */
  readonly careful?: boolean
  /**
   * What the last visit left, when the screw has not been touched since, the tube is the same and it has not been
   * looked at yet. Leave out once the tube and the line were checked.
   */
  readonly leftUntouched?: { readonly flow: number; readonly expanded: number } | null
}

export type NotTheScrew =
  'screw-does-not-act' | 'wrong-way' | 'worn-tube-or-leak' | 'out-of-range' | 'no-flow' | 'too-many-moves'

export type TurnAdvice =
  | {
      readonly kind: 'turn'
      /** net movement, clockwise positive */
      readonly eighths: number
      /** how far past to back off before coming up clockwise; 0 when the move is clockwise */
      readonly backOffEighths: number
      readonly isTestMove: boolean
      readonly learnedFrom: 'this-visit' | 'earlier-visits' | 'same-kind' | 'nothing-yet'
      /** flow the next test is expected to show, with its 95 % interval */
      readonly expectedFlow: Estimate<'mL/min'> | null
      /** mL/min per turn; null while nothing is known of this screw */
      readonly gain: Estimate<'mL/min'> | null
      /** eighths still wanted after this move, when the step was capped */
      readonly remainingEighths: number
      /** chance that the flow is inside the window after this move, 0 to 1 */
      readonly chance?: number
    }
  | {
      readonly kind: 'leave'
      readonly reason: 'proved-in' | 'within-half-a-step' | 'not-worth-a-move'
      /** further runs that would prove the dose without a turn */
      readonly moreRuns?: number
    }
  | { readonly kind: 'diagnose'; readonly finding: NotTheScrew; readonly probability: number | null }
  | {
      readonly kind: 'confirm'
      readonly finding: NotTheScrew
      readonly probability: number | null
      /** the move that would tell, clockwise positive, and how far past to back off first */
      readonly eighths?: number
      readonly backOffEighths?: number
    }
  | { readonly kind: 'refuse'; readonly reasons: readonly TurnRefusal[] }

export type TurnRefusal =
  | 'not-tested'
  | 'not-primed'
  | 'too-few-runs'
  | 'series-trends'
  | 'series-scatters'
  | 'conditions-not-answered'
  | 'condition-not-ok'
  | 'no-window'
  | 'not-set-by-screw'
  | 'held-by-probe'
  | 'inputs-missing'
  | 'caution-not-acknowledged'
  | 'series-has-outlier'
