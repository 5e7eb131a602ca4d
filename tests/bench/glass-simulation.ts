import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { CAUSE_IDS } from '#core/glass/causes'
import { glassModel } from '#core/glass/model'
import { TESTS } from '#core/glass/tests'
import { bound, type Bound } from './glass-simulation/bound'
import type { Habits } from './glass-simulation/mistakes'
import type { Order } from './glass-simulation/operator'
import { tally, type Tally } from './glass-simulation/tally'
import { twoFaults } from './glass-simulation/two-faults'
import { physicalWorld, weightsWorld, type World } from './glass-simulation/worlds'

/** Held out: no choice in the program or in the kitchens was made by looking at a run of this seed. */
const HELD_OUT = 20_261_125
const MOST = 7

const model = glassModel([])
const usual: Habits = { wrong: 0.1, wrongPer: 'answer', cannot: [], record: [] }
const needsKit = TESTS.filter((test) => ['strip', 'meter', 'call'].includes(test.effort)).map(
  (test) => test.id,
)

const arms: readonly (readonly [string, World, Habits, Order])[] = [
  ['as the program asks', physicalWorld, usual, 'gain'],
  ['easiest test first (fixed order)', physicalWorld, usual, 'easiest-first'],
  ['order of the bench sheet (fixed)', physicalWorld, usual, 'bench'],
  ['random order', physicalWorld, usual, 'random'],
  ['  no wrong answers', physicalWorld, { ...usual, wrong: 0 }, 'gain'],
  ['  every single sign wrong 10 %', physicalWorld, { ...usual, wrongPer: 'sign' }, 'gain'],
  ['  eyes, cloth and vinegar only', physicalWorld, { ...usual, cannot: needsKit }, 'gain'],
  [
    '  a visit has measured doses and water',
    physicalWorld,
    { ...usual, record: ['measured', 'water-meters', 'gauges'] },
    'gain',
  ],
  ['kitchens drawn from the weights', weightsWorld(model), usual, 'gain'],
  ['  random order', weightsWorld(model), usual, 'random'],
]

const percent = (share: number): string => `${Math.round(100 * share)}`.padStart(3)
const tenths = (share: number): string => (100 * share).toFixed(1)

/**
 * How soon the glass check has the true cause among its first two, in seeded kitchens that know nothing of the weights,
 * one answer in ten wrong; beside fixed orders, a random one, and the best that could be reached. Writes
 * test-results/glass-simulation.json.
 */
export function glassSimulation(kitchens: number): void {
  console.log(
    `Why glasses spot: ${kitchens} kitchens for each of ${CAUSE_IDS.length} causes, one answer in ten wrong, seed ${HELD_OUT}.\n` +
      `True cause first or second, percent, after 0 to ${MOST} tests; then after 5 tests with causes as common as their priors`,
  )
  const results = arms.map(([name, world, habits, order]) => {
    const result = tally({
      world,
      habits,
      order,
      model,
      kitchensPerCause: kitchens,
      seed: HELD_OUT,
      mostTests: MOST,
    })
    console.log(
      `${name.padEnd(40)} ${result.found.map(percent).join(' ')} | ${tenths(result.foundByPrior[5] ?? 0)}` +
        ` | tests until it stays found ${result.meanTests.toFixed(2)}` +
        ` | as the screen stops: ${result.stopped.meanTests.toFixed(2)} tests, ${tenths(result.stopped.found)} %`,
    )
    return { name, order, ...result }
  })
  const best = bound(Math.max(10, Math.round(kitchens / 4)), usual, HELD_OUT)
  console.log(
    `${'bound: knows the kitchens exactly'.padEnd(40)} ${best.found
      .slice(0, MOST + 1)
      .map(percent)
      .join(' ')} | ${tenths(best.foundByPrior)} | with every test ${tenths(best.found.at(-1) ?? 0)}`,
  )
  const first = results[0]
  if (first !== undefined)
    console.log(
      `After 5 tests: ${tenths(first.found[5] ?? 0)} % of a goal of 90 %, bound ${tenths(best.found[5] ?? 0)} %.\n${table(first, best)}`,
    )
  const two = twoFaults(Math.max(2, Math.round(kitchens / 20)), usual, model, HELD_OUT)
  console.log(
    `Two faults at once, ${two.kitchens} kitchens: one of them first ${percent(two.oneStandsFirst)} %, one of the first two ${percent(two.oneInFirstTwo)} %, ` +
      `both among the first three ${percent(two.bothInFirstThree)} %, second named beside the first ${percent(two.namedBeside)} %, ` +
      `"cannot separate yet" ${percent(two.notSeparated)} %; with one fault, a second falsely named ${percent(two.falselyNamed)} %`,
  )
  const out = fileURLToPath(new URL('../../test-results/', import.meta.url))
  mkdirSync(out, { recursive: true })
  writeFileSync(
    join(out, 'glass-simulation.json'),
    `${JSON.stringify({ kitchens, seed: HELD_OUT, results, bound: best, twoFaults: two }, null, 2)}\n`,
  )
}

function table(result: Tally, best: Bound): string {
  const head = `${'true \\ stands first, percent'.padEnd(28)}1st/2nd bound${CAUSE_IDS.map((id) => id.slice(0, 8).padStart(9)).join('')}`
  const rows = CAUSE_IDS.map(
    (cause) =>
      `${cause.padEnd(28)}${percent(result.byCause[cause]).padStart(7)} ${percent(best.byCause[cause]).padStart(5)}${CAUSE_IDS.map((id) => percent(result.confusion[cause][id]).padStart(9)).join('')}`,
  )
  return [head, ...rows].join('\n')
}

// `npx tsx tests/bench/glass-simulation.ts [kitchens per cause]` runs it alone
if (process.argv[1]?.endsWith('glass-simulation.ts') === true) glassSimulation(Number(process.argv[2] ?? 400))
