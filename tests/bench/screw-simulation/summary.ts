import type { VisitPlayed } from './visit'

export interface Summary {
  readonly name: string
  readonly visits: number
  /** share proved in with at most 0, 1, 2, 3, 4 turns */
  readonly within: readonly number[]
  /** share proved in with exactly 0, 1, 2, 3, 4, with 5 or more turns, and never */
  readonly distribution: readonly number[]
  /** turns at the 25th, 50th, 75th, 90th, 95th and 99th percentile; Infinity: not proved in */
  readonly percentiles: readonly number[]
  /** moves away from the target among all moves */
  readonly wrongWay: number
  readonly moves: number
  readonly extraRuns: number
  /** share of tests after a move inside the 95 % interval foretold; null without a forecast */
  readonly asForetold: number | null
}

const share = (turns: readonly number[], is: (turns: number) => boolean): number =>
  turns.filter(is).length / turns.length

export const PERCENTILES = [25, 50, 75, 90, 95, 99] as const

export function summarise(name: string, visits: readonly VisitPlayed[]): Summary {
  const turns = visits.map((visit) => (visit.provedIn ? visit.turns : Infinity)).toSorted((a, b) => a - b)
  const total = (of: (visit: VisitPlayed) => number): number =>
    visits.reduce((sum, visit) => sum + of(visit), 0)
  const foretold = total((visit) => visit.foretold)
  return {
    name,
    visits: visits.length,
    within: [0, 1, 2, 3, 4].map((most) => share(turns, (t) => t <= most)),
    distribution: [
      ...[0, 1, 2, 3, 4].map((exactly) => share(turns, (t) => t === exactly)),
      share(turns, (t) => t > 4 && t < Infinity),
      share(turns, (t) => t === Infinity),
    ],
    percentiles: PERCENTILES.map((p) => turns[Math.ceil((p / 100) * turns.length) - 1] ?? Infinity),
    wrongWay: total((visit) => visit.wrongWay),
    moves: total((visit) => visit.turns),
    extraRuns: total((visit) => visit.extraRuns) / visits.length,
    asForetold: foretold === 0 ? null : total((visit) => visit.asForetold) / foretold,
  }
}

/** What ends a visit with the trouble named for what it is. */
const NAMED = new Set([
  'screw-does-not-act',
  'worn-tube-or-leak',
  'out-of-range',
  'no-flow',
  'wrong-way',
  'too-many-moves',
  'series refused',
])

export interface Naming {
  readonly condition: string
  /** visits in which there was trouble to name: not proved in */
  readonly troubled: number
  /** share of those named after at most 0, 1, 2, 3, 4 moves */
  readonly within: readonly number[]
}

export function naming(condition: string, visits: readonly VisitPlayed[]): Naming {
  const troubled = visits.filter((visit) => !visit.provedIn)
  const named = troubled.filter((visit) => NAMED.has(visit.ended))
  return {
    condition,
    troubled: troubled.length,
    within: [0, 1, 2, 3, 4].map((most) => named.filter((v) => v.turns <= most).length / troubled.length),
  }
}

/** Air is named when the series is refused; it is then primed away and the visit goes on. */
export const airNaming = (visits: readonly VisitPlayed[]): Naming => ({
  condition: 'air in the line',
  troubled: visits.length,
  within: [0, 1, 2, 3, 4].map(
    (most) => visits.filter((v) => v.refusedAfter !== null && v.refusedAfter <= most).length / visits.length,
  ),
})
