import type { DoseRound, DoseWindow } from './dose-rounds'

/** Values at the two ends of the axis, in the unit of the window. */
export interface Axis {
  readonly low: number
  readonly high: number
}

/** How many window widths are shown at most beyond each end of the window: the window must stay readable. */
const BEYOND = 1.5
const MARGIN = 0.35

/**
 * The stretch of values to draw: the window with some room, and every interval as far as it does not squeeze the
 * window below a quarter of the width. What lies further out is drawn as an arrow at the edge.
 */
export function axisOf(window: DoseWindow, rounds: readonly DoseRound[]): Axis {
  const width = window.high > window.low ? window.high - window.low : Math.max(window.target, 1)
  const lows = rounds.map((round) => round.estimate.low)
  const highs = rounds.map((round) => round.estimate.high)
  const pad = 0.12 * width
  return {
    low: Math.max(
      0,
      window.low - BEYOND * width,
      Math.min(window.low - MARGIN * width, ...lows.map((low) => low - pad)),
    ),
    high: Math.min(
      window.high + BEYOND * width,
      Math.max(window.high + MARGIN * width, ...highs.map((high) => high + pad)),
    ),
  }
}

export interface Placed {
  /** px, kept inside the axis */
  readonly x: number
  readonly from: number
  readonly to: number
  /** the value itself lies beyond this end of the axis */
  readonly beyond: 'low' | 'high' | null
}

/** Where a value and its interval are drawn, in px between `left` and `right`. */
export function place(
  axis: Axis,
  value: { readonly value: number; readonly low: number; readonly high: number },
  left: number,
  right: number,
): Placed {
  const at = (v: number): number => {
    const share = (v - axis.low) / (axis.high - axis.low)
    return left + Math.min(1, Math.max(0, share)) * (right - left)
  }
  return {
    x: at(value.value),
    from: at(value.low),
    to: at(value.high),
    beyond: value.value < axis.low ? 'low' : value.value > axis.high ? 'high' : null,
  }
}
