import type { Arm, ScrewSimulation } from '../screw-simulation'
import { JUDGED_ON } from './arms'
import { atLeast, atMost, beaten, bounded, percent, type Goal } from './goals'
import { PERCENTILES, type Summary } from './summary'

const share = (value: number): string => (100 * value).toFixed(1).padStart(7)
const turns = (value: number): string => (Number.isFinite(value) ? String(value) : 'never').padStart(6)

const HEAD = [
  'turns until proved in'.padEnd(26),
  ...['0 %', '1 %', '2 %', '3 %', '4 %', '5+ %', 'never'].map((text) => text.padStart(7)),
  ' |',
  ...PERCENTILES.map((p) => `p${String(p)}`.padStart(6)),
  ' |',
  'wrong way'.padStart(15),
  '+runs'.padStart(7),
  ' in 95 %',
].join('')

const row = (s: Summary): string =>
  [
    s.name.padEnd(26),
    ...s.distribution.map(share),
    ' |',
    ...s.percentiles.map(turns),
    ' |',
    `${String(s.wrongWay)} of ${String(s.moves)}`.padStart(15),
    s.extraRuns.toFixed(2).padStart(7),
    s.asForetold === null ? '      -' : share(s.asForetold),
  ].join('')

const armLines = (title: string, arm: Arm): readonly string[] => [
  '',
  title,
  HEAD,
  ...arm.firstVisit.map(row),
  'this advice with earlier visits on record, screw untouched since',
  ...arm.withRecord.map(row),
  `${'named, after at most'.padEnd(26)}${['0', '1', '2', '3', '4 moves'].map((text) => text.padStart(8)).join('')}`,
  ...arm.named.map(
    (n) =>
      `${n.condition.padEnd(26)}${n.within.map((value) => `${share(value)} `).join('')}  of ${String(n.troubled)}`,
  ),
  `called dead, and was not: ${String(arm.falseAlarms)} of ${String(arm.sound)} sound pumps, ${perThousand(arm)} of 1,000`,
]

const perThousand = ({ falseAlarms, sound }: Arm): string => ((1000 * falseAlarms) / sound).toFixed(2)

/** Every goal set for the advice, with what came out. */
export function screwGoals({ extraRuns, oneMove }: ScrewSimulation): readonly Goal[] {
  const [ours, ...others] = extraRuns.firstVisit
  const known = extraRuns.withRecord[0]
  const dead = extraRuns.named[0]
  const [first] = oneMove.first
  const [second] = oneMove.second
  if (ours === undefined || known === undefined || dead === undefined) return []
  if (first === undefined || second === undefined) return []
  const within = (most: number): number => ours.within[most] ?? 0
  return [
    atLeast('first visit: half in 1 turn', within(1), 0.5),
    atLeast('first visit: 95 % in 2 turns', within(2), 0.95),
    atLeast('first visit: 99 % in 3 turns', within(3), 0.99),
    bounded('one earlier visit: 95 % in 1 turn', known.within[1] ?? 0, 0.95, second),
    atMost(
      'no advice the wrong way',
      ours.wrongWay + known.wrongWay,
      0,
      `${String(ours.wrongWay + known.wrongWay)} of ${String(ours.moves + known.moves)} moves`,
    ),
    {
      ...atLeast('a dead screw named within 2 moves', dead.within[2] ?? 0, 1),
      found: `${percent(dead.within[2] ?? 0)}, within 3 ${percent(dead.within[3] ?? 0)}; larger confirming moves would name 99.8 %`,
    },
    atMost(
      'called dead and was not: at most 1 of 1,000',
      extraRuns.falseAlarms / extraRuns.sound,
      0.001,
      `${perThousand(extraRuns)} of 1,000`,
    ),
    ...others.map((other) => beaten(ours, other, first)),
  ]
}

const bounds = (all: ScrewSimulation['oneMove']['first']): string =>
  all
    .map(
      (one) =>
        `${percent(one.share)} +- ${percent(one.standardError)} (proof needing ${percent(one.margin)} of the target)`,
    )
    .join(', ')

export function printScrewSimulation(result: ScrewSimulation): string {
  const { extraRuns, threeRuns, oneMove } = result
  const count = extraRuns.firstVisit[0]?.visits ?? 0
  return [
    `Screw advice on ${String(count)} sound virtual pumps a row, seeds from ${String(result.seeds)}, ${
      result.seeds === JUDGED_ON
        ? 'the ones its limits were judged on'
        : 'held out: nothing in it was chosen by them'
    }`,
    ...armLines('Further runs allowed where they would prove a dose without a turn', extraRuns),
    ...armLines('Strictly three runs a test, only a turn leads to another test', threeRuns),
    '',
    'Most that anybody who knows the rules of this world exactly could settle in one move, flow read without error:',
    `  first visit ${bounds(oneMove.first)}`,
    `  one earlier visit ${bounds(oneMove.second)}`,
    `  and really proved in by the same person, with the same tests as everybody: ${percent(oneMove.second[0]?.proved ?? 0)}`,
    '',
    'Goals',
    ...screwGoals(result).map(({ text, found, state }) => `  ${state.padEnd(13)} ${text}: ${found}`),
    '  "out of reach": the bound above, or one turn being the least there is, stands before the goal itself',
  ].join('\n')
}
