/** Strength after a number of racks since the start of service, g/L. */
export interface StrengthPoint {
  readonly rack: number
  /** just after the rack and its dose */
  readonly strength: number
  /** the lowest during that rack; equal to `strength` or above it never */
  readonly trough: number
  /** the strength with the feed at either end of its uncertainty */
  readonly low: number
  readonly high: number
  /** a fresh fill: drawn as a jump */
  readonly fill: boolean
}

export interface StrengthSeries {
  readonly points: readonly StrengthPoint[]
  readonly racks: number
  readonly fills: readonly number[]
  /** what every fill heads for, g/L */
  readonly settlesAt: number
  readonly lowest: number
  readonly highest: number
  /** over all racks, of the strengths just after each */
  readonly mean: number
  readonly last: number
  /** racks after which the strength stood outside the window; null without a window */
  readonly racksBelow: number | null
  readonly racksAbove: number | null
  /** first and last rack after which it stood below, above; null when never, or without a window */
  readonly firstBelow: number | null
  readonly lastBelow: number | null
  readonly firstAbove: number | null
  readonly lastAbove: number | null
}

/** More points than this are thinned for the chart; fills, and the racks beside them, always stay. */
const MOST_POINTS = 400

/** Thins the points for the chart and counts what a person asks about; `window` in g/L. */
export function summarize(
  points: readonly StrengthPoint[],
  fills: readonly number[],
  target: number,
  window: { readonly low: number; readonly high: number } | null,
): StrengthSeries {
  const washed = points.filter((each) => !each.fill)
  const strengths = points.map((each) => each.strength)
  const below = window === null ? null : washed.filter((each) => each.strength < window.low)
  const above = window === null ? null : washed.filter((each) => each.strength > window.high)
  return {
    points: thin(points),
    racks: washed.length,
    fills,
    settlesAt: target,
    lowest: strengths.reduce((least, each) => Math.min(least, each), Infinity),
    highest: strengths.reduce((most, each) => Math.max(most, each), 0),
    mean: washed.reduce((sum, each) => sum + each.strength, 0) / washed.length,
    last: points.at(-1)?.strength ?? 0,
    racksBelow: below?.length ?? null,
    racksAbove: above?.length ?? null,
    firstBelow: below?.[0]?.rack ?? null,
    lastBelow: below?.at(-1)?.rack ?? null,
    firstAbove: above?.[0]?.rack ?? null,
    lastAbove: above?.at(-1)?.rack ?? null,
  }
}

function thin(points: readonly StrengthPoint[]): readonly StrengthPoint[] {
  const every = Math.ceil(points.length / MOST_POINTS)
  if (every === 1) return points
  return points.filter(
    (each, i) => i % every === 0 || each.fill || points[i + 1]?.fill === true || i === points.length - 1,
  )
}
