import { fileURLToPath } from 'node:url'
import { firstVisits, HELD_OUT, JUDGED_ON, visitsWithRecord } from './screw-simulation/arms'
import { bestPossibleFirstVisit, bestPossibleSecondVisit, type Bound } from './screw-simulation/best-possible'
import { printScrewSimulation } from './screw-simulation/print'
import { advice, fixedGain, quarterTurns, secant } from './screw-simulation/strategies'
import { airNaming, naming, summarise, type Naming, type Summary } from './screw-simulation/summary'
import { EXTRA_RUNS, THREE_RUNS, type Rules } from './screw-simulation/visit'

/** One set of rules, kept by all strategies alike. */
export interface Arm {
  /** the advice first, then the plain strategies */
  readonly firstVisit: readonly Summary[]
  readonly withRecord: readonly Summary[]
  readonly named: readonly Naming[]
  /** sound pumps whose screw was called dead, first visits and visits with a record, and how many were played */
  readonly falseAlarms: number
  readonly sound: number
}

export interface ScrewSimulation {
  readonly seeds: number
  readonly extraRuns: Arm
  readonly threeRuns: Arm
  /** what nobody can pass in one move, on a first visit and with one earlier visit on record */
  readonly oneMove: { readonly first: readonly Bound[]; readonly second: readonly Bound[] }
}

const PLAIN = [
  ['always a quarter turn', quarterTurns],
  ['secant', secant],
  ['fixed gain 0.35', fixedGain(0.35)],
] as const

/** What a proof needs inside the window, share of the target: nothing at all, and about what three runs leave open. */
const MARGINS = [0, 0.02]

/**
 * Plays the screw advice on `count` virtual pumps next to three plain strategies, once with extra runs where those would
 * prove a dose, once with strictly three runs a test. Seeded: the same every time.
 */
export function screwSimulation(count: number, seeds = HELD_OUT): ScrewSimulation {
  const pumps = Math.min(2000, Math.max(40, Math.round(count / 5)))
  return {
    seeds,
    extraRuns: arm(count, seeds, EXTRA_RUNS),
    threeRuns: arm(count, seeds, THREE_RUNS),
    oneMove: {
      first: bestPossibleFirstVisit(pumps, 2000, MARGINS, seeds),
      second: bestPossibleSecondVisit(pumps, 4000, MARGINS, seeds),
    },
  }
}

function arm(count: number, seeds: number, rules: Rules): Arm {
  const bad = Math.max(20, Math.round(count / 20))
  const half = Math.round(bad / 2)
  const first = { rules, seeds }
  const sound = firstVisits(count, 'sound', advice, first)
  const second = visitsWithRecord(count, advice, { earlier: 1, drift: 0.3, ...first })
  const third = visitsWithRecord(Math.round(count / 4), advice, { earlier: 2, drift: 0.3, ...first })
  const calm = visitsWithRecord(Math.round(count / 4), advice, { earlier: 1, drift: 0.15, ...first })
  const worn = visitsWithRecord(bad, advice, { earlier: 1, drift: 0.05, wornSince: true, ...first })
  const everySound = [...sound, ...second, ...third, ...calm]
  return {
    firstVisit: [
      summarise('this advice', sound),
      ...PLAIN.map(([name, strategy]) => summarise(name, firstVisits(count, 'sound', strategy, first))),
    ],
    withRecord: [
      summarise('one earlier visit', second),
      summarise('two earlier visits', third),
      summarise('one, flow moved by 15 %', calm),
    ],
    named: [
      naming('dead screw', firstVisits(half, 'dead', advice, first)),
      naming('slipping screw', firstVisits(half, 'slipping', advice, first)),
      naming('worn tube, first visit', firstVisits(bad, 'worn', advice, first)),
      naming('worn since the last visit', worn),
      airNaming(firstVisits(bad, 'air', advice, first)),
    ],
    falseAlarms: everySound.filter((visit) => visit.ended === 'screw-does-not-act').length,
    sound: everySound.length,
  }
}

/** `tsx tests/bench/screw-simulation.ts 10000`; with `judged-on` behind it, on the pumps the limits were judged on. */
if (process.argv[1] === fileURLToPath(import.meta.url))
  console.log(
    printScrewSimulation(
      screwSimulation(
        Number(process.argv[2] ?? 10_000),
        process.argv[3] === 'judged-on' ? JUDGED_ON : HELD_OUT,
      ),
    ),
  )
