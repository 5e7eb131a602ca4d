import { fileURLToPath } from 'node:url'
import { firstVisits, visitsWithRecord } from './screw-simulation/arms'
import { bestPossibleSecondVisit } from './screw-simulation/best-possible'
import { advice, fixedGain, quarterTurns, secant } from './screw-simulation/strategies'
import {
  PERCENTILES,
  airNaming,
  naming,
  summarise,
  type Naming,
  type Summary,
} from './screw-simulation/summary'

export interface ScrewSimulation {
  readonly firstVisit: readonly Summary[]
  readonly withRecord: readonly Summary[]
  readonly named: readonly Naming[]
  /** sound pumps whose screw was called dead, first visits and visits with a record, and how many were played */
  readonly falseAlarms: number
  readonly sound: number
  /** the bound of `bestPossibleSecondVisit`, by the share of the target a proof is taken to need */
  readonly bound: readonly { readonly margin: number; readonly share: number }[]
}

/** Plays the screw advice on `count` virtual pumps next to three plain strategies. Seeded: the same every time. */
export function screwSimulation(count: number): ScrewSimulation {
  const bad = Math.max(20, Math.round(count / 20))
  const half = Math.round(bad / 2)
  const sound = firstVisits(count, 'sound', advice)
  const second = visitsWithRecord(count, advice, { earlier: 1, drift: 0.3 })
  const third = visitsWithRecord(Math.round(count / 4), advice, { earlier: 2, drift: 0.3 })
  const calm = visitsWithRecord(Math.round(count / 4), advice, { earlier: 1, drift: 0.15 })
  const wornSince = visitsWithRecord(bad, advice, { earlier: 1, drift: 0.05, wornSince: true })
  const everySound = [...sound, ...second, ...third, ...calm]
  const margins = [0, 0.02]
  const bound = bestPossibleSecondVisit(Math.min(400, Math.round(count / 20)), 4000, margins)
  return {
    firstVisit: [
      summarise('this advice', sound),
      summarise('always a quarter turn', firstVisits(count, 'sound', quarterTurns)),
      summarise('secant', firstVisits(count, 'sound', secant)),
      summarise('fixed gain 0.35', firstVisits(count, 'sound', fixedGain(0.35))),
    ],
    withRecord: [
      summarise('one earlier visit', second),
      summarise('two earlier visits', third),
      summarise('one, flow moved by 15 %', calm),
    ],
    named: [
      naming('dead screw', firstVisits(half, 'dead', advice)),
      naming('slipping screw', firstVisits(half, 'slipping', advice)),
      naming('worn tube, first visit', firstVisits(bad, 'worn', advice)),
      naming('worn since the last visit', wornSince),
      airNaming(firstVisits(bad, 'air', advice)),
    ],
    falseAlarms: everySound.filter((visit) => visit.ended === 'screw-does-not-act').length,
    sound: everySound.length,
    bound: margins.map((margin, i) => ({ margin, share: bound[i] ?? 0 })),
  }
}

const percent = (share: number): string => (100 * share).toFixed(1).padStart(6)
const turns = (value: number): string => (Number.isFinite(value) ? String(value) : 'never').padStart(6)

const row = (s: Summary): string =>
  [
    s.name.padEnd(26),
    ...s.percentiles.map(turns),
    ' |',
    ...s.within.map(percent),
    ' |',
    `${String(s.wrongWay)} of ${String(s.moves)}`.padStart(12),
    s.extraRuns.toFixed(2).padStart(7),
    s.asForetold === null ? '      -' : percent(s.asForetold),
  ].join('')

export function printScrewSimulation(result: ScrewSimulation): string {
  const head = [
    'turns until proved in'.padEnd(26),
    ...PERCENTILES.map((p) => `p${String(p)}`.padStart(6)),
    ' |',
    ...['<=0 %', '<=1 %', '<=2 %', '<=3 %', '<=4 %'].map((text) => text.padStart(6)),
    ' |',
    'wrong way'.padStart(12),
    '+runs'.padStart(7),
    ' in 95%',
  ].join('')
  return [
    `Screw advice on virtual pumps: ${String(result.firstVisit[0]?.visits ?? 0)} sound ones per row of the first table`,
    '',
    head,
    ...result.firstVisit.map(row),
    ...result.firstVisit
      .slice(0, 1)
      .map(
        ({ withinThreeRuns }) =>
          `of the first row without a single run beyond three a test: ${withinThreeRuns
            .map((share, turns) => `${percent(share).trim()} % in ${String(turns)}`)
            .join(', ')}`,
      ),
    '',
    'with a record of earlier visits, screw untouched since'.padEnd(26),
    ...result.withRecord.map(row),
    `nobody could do better in one move than ${result.bound
      .map((b) => `${percent(b.share).trim()} % (proof needing ${percent(b.margin).trim()} % of the target)`)
      .join(', ')}: one earlier visit does not tell the gain well enough`,
    '',
    'trouble named after at most'.padEnd(26) +
      ['0', '1', '2', '3', '4 moves'].map((text) => text.padStart(8)).join(''),
    ...result.named.map(
      (n) =>
        n.condition.padEnd(26) +
        n.within.map((share) => `${percent(share)} %`).join('') +
        `   of ${String(n.troubled)}`,
    ),
    `called dead, and was not: ${String(result.falseAlarms)} of ${String(result.sound)} sound pumps`,
  ].join('\n')
}

if (process.argv[1] === fileURLToPath(import.meta.url))
  console.log(printScrewSimulation(screwSimulation(Number(process.argv[2] ?? 10_000))))
