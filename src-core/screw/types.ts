import type { Estimate } from '../statistics/estimate'

/** What the learner has seen: net eighths since the witness mark, and the flow there. */
export interface ScrewObservation {
  readonly eighths: number
  /** mL/min */
  readonly flow: number
  /** standard uncertainty, mL/min */
  readonly standard: number
}

/** How much one turn is believed to do before this visit taught anything. mL/min per turn. */
export interface GainPrior {
  readonly gain: number
  readonly standard: number
  readonly from: 'earlier-visits' | 'same-kind' | 'none'
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
      readonly expectedFlow: Estimate<'mL/min'> | null
      readonly gain: Estimate<'mL/min'> | null
      /** turns still wanted after this one, when the step was capped */
      readonly remainingEighths: number
    }
  | { readonly kind: 'leave'; readonly reason: 'proved-in' | 'within-half-a-step' | 'not-worth-a-move' }
  | { readonly kind: 'diagnose'; readonly finding: NotTheScrew; readonly probability: number | null }
  | { readonly kind: 'confirm'; readonly finding: NotTheScrew; readonly probability: number | null }
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
  | 'inputs-missing'
  | 'caution-not-acknowledged'
  | 'series-has-outlier'
